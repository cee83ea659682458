import { readdirSync, readFileSync, statSync } from "node:fs";
import { join } from "node:path";
import { gzipped } from "./firstView.ts";

/** A file of a built site. */
export interface SiteFile {
  /** From the site's root, with forward slashes. */
  readonly path: string;
  readonly bytes: number;
}

export function siteFiles(folder: string): readonly SiteFile[] {
  return readdirSync(folder, { recursive: true, withFileTypes: true })
    .filter((entry) => entry.isFile())
    .map((entry) => {
      const file = join(entry.parentPath, entry.name);
      return { path: file.slice(folder.length + 1).replaceAll("\\", "/"), bytes: statSync(file).size };
    });
}

/** A kind of page, and the page of that kind that weighs most. */
export interface PageKind {
  readonly kind: string;
  readonly pages: number;
  /** Address from the site's root. */
  readonly heaviest: string;
  /** Each page of that kind as it lies on the disk. */
  readonly bytes: readonly number[];
}

/** What the pages of single runs are called as a kind. */
export const RUN_PAGES = "runs/<run>/";

const RUN_PAGE = /^runs\/[^/]+\/index\.html$/;

/** The pages of a built site by kind: every run's page is of one kind, any other page is of its own. */
export function pageKinds(folder: string, files: readonly SiteFile[]): readonly PageKind[] {
  const kinds = new Map<string, SiteFile[]>();
  for (const file of files) {
    if (!file.path.endsWith(".html")) continue;
    const kind = RUN_PAGE.test(file.path) ? RUN_PAGES : file.path.replace(/index\.html$/, "") || "front page";
    kinds.set(kind, [...(kinds.get(kind) ?? []), file]);
  }
  return [...kinds]
    .map(([kind, pages]) => {
      const weighed = pages.map((page) => ({ ...page, packed: gzipped(readFileSync(join(folder, page.path))) }));
      const heaviest = weighed.reduce((most, page) => (page.packed > most.packed ? page : most));
      return {
        kind,
        pages: pages.length,
        heaviest: heaviest.path.replace(/index\.html$/, ""),
        bytes: pages.map(({ bytes }) => bytes),
      };
    })
    .sort((a, b) => (a.kind < b.kind ? -1 : 1));
}
