import { mostOwnLogs } from "../../findings/ownLogsSentences.ts";
import type { SizeLimits } from "./ownLogFiles.ts";

// Measured in Chromium 156, 64 bits, with a reading a second: 584 MB in quarterly files took 1.8 GB of memory at its highest,
// 499 MB in two files as much, 417 MB in one file too, and about 4 MB were read a second on two busy cores. A browser ends a page
// that asks for more than there is, without a word (from memory, not measured): so the limits leave room and shrink with the
// computer.

/** A computer that has less than this, GB, gets a smaller share, by its memory; the page says so. */
const ENOUGH_MEMORY = 4;

/**
 * How much a browser on this computer can be asked to read.
 *
 * @param memoryGigabytes as the browser tells it, roughly; undefined where it does not
 */
export function sizeLimits(memoryGigabytes: number | undefined): SizeLimits {
  const share = Math.min(1, (memoryGigabytes ?? ENOUGH_MEMORY) / ENOUGH_MEMORY);
  return { all: mostOwnLogs.all * share, oneFile: mostOwnLogs.oneFile * share };
}
