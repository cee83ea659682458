import type { LoadableDatabase } from "../../engine/database.ts";
import { enterLogs } from "../../report/enterLogs.ts";
import type { PublishedLogs } from "../../report/publishedLogs.ts";
import type { ChosenFile } from "./chosenFile.ts";
import { ownLogFiles } from "./ownLogFiles.ts";
import { type ReadingProgress, readingTeller } from "./readingProgress.ts";
import { sizeLimits } from "./sizeLimits.ts";

interface EnterOwn {
  /** Text of a house.toml for logs that bring none. */
  readonly house: string;
  readonly onProgress: (progress: ReadingProgress) => void;
}

/**
 * Reads what a reader chose into the engine, in the worker: the steps of the build, with bytes from files chosen.
 *
 * @throws {RefusedLogs} with a sentence where there is nothing to read, or more than a browser can hold
 */
export async function enterOwnLogs(
  chosen: readonly ChosenFile[],
  database: LoadableDatabase,
  { house, onProgress }: EnterOwn,
): Promise<{ readonly published: PublishedLogs; readonly readings: ReadonlyMap<string, Blob> }> {
  // Chromium alone tells it.
  const memory = (navigator as { readonly deviceMemory?: number }).deviceMemory;
  const { onBytes, onLoad, onStep } = readingTeller(onProgress);
  const { files } = await ownLogFiles(chosen, { house, limits: sizeLimits(memory), onBytes });
  const { published, readings } = await enterLogs(files, database, {
    invented: false,
    now: Date.now(),
    onLoad,
    onStep,
  });
  // As blobs, which a browser may put on disk; they are asked for one at a time.
  const kept = [...readings].map(([file, csv]) => [file, new Blob([csv.slice()])] as const);
  return { published, readings: new Map(kept) };
}
