import type { SharedSite } from "./sharedSite.ts";

/**
 * Astro renders pages in modules of its own, which take no arguments; they share the process, and so what is put here.
 * Unlike a file or the environment it leaves nothing behind: the keys of sealed pages are in it.
 */
const PLACE = Symbol.for("piecebook.shared-site");
const places = globalThis as unknown as Record<symbol, SharedSite | undefined>;

/** Puts the projected data where the pages find it; `null` takes it away. */
export function handOver(site: SharedSite | null): void {
  if (site === null) delete places[PLACE];
  else places[PLACE] = site;
}

/** @throws {RangeError} when the build was not started by the share command */
export function siteInHand(): SharedSite {
  const site = places[PLACE];
  if (site === undefined) throw new RangeError("siteInHand requires a site handed over by the share command; got none");
  return site;
}
