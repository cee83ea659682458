import type { UnitSystem } from "../units/unitSystem.ts";

/** Where the parts of the site lie, as absolute addresses, read from the page's own markup. */
export interface SitePlaces {
  readonly root: string;
  /** Folder of the published tables, with a closing slash. */
  readonly tables: string;
  /** Folder of the engine. */
  readonly engine: string;
  /** Name inside the tables' folder. */
  readonly published: string;
  /** Digest in the names of the built report's files there. */
  readonly report: string;
  /** What the house itself counts in. */
  readonly units: UnitSystem;
}

/** @throws {RangeError} on a page that was not built by this site */
export function readSitePlaces(main: HTMLElement): SitePlaces {
  const { root, published, report } = main.dataset;
  if (root === undefined || published === undefined || report === undefined) {
    throw new RangeError("the page's main element lacks its data-root, data-published or data-report");
  }
  const at = (path: string): string => new URL(path, new URL(root, location.href)).href;
  const units = main.dataset.units === "us" ? "us" : "metric";
  return { root: at("./"), tables: at("tables/"), engine: at("engine/"), published, report, units };
}
