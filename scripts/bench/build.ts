import { rmSync } from "node:fs";
import { median } from "../../src/analysis/summary.ts";
import { openBrowser } from "../../tests/support/browser.ts";
import { serveFolder } from "../siteServer.ts";
import type { Bench } from "./bench.ts";
import { type Build, buildInChild } from "./buildInChild.ts";
import { firstView, PARTS_OF_A_VIEW } from "./firstView.ts";
import { printTable } from "./printTable.ts";
import { progress } from "./progress.ts";
import { type PageKind, pageKinds, RUN_PAGES, type SiteFile, siteFiles } from "./siteFiles.ts";
import { SPREAD_HEADINGS, spreadCells } from "./spread.ts";
import type { MadeUpSite } from "./workshop.ts";

const HOUSE = { runs: 2000, years: 10 };
/** A build takes most of a minute; three tell whether it is steady. */
const MOST_BUILDS = 3;
/** What a run's page is to stay under as it lies on the disk. */
const RUN_PAGE_AIM_BYTES = 25_000;

const kilobytes = (bytes: number): string => (bytes / 1000).toFixed(1);
const megabytes = (bytes: number): string => (bytes / 1e6).toFixed(1);
const sum = (files: readonly { readonly bytes: number }[]): number =>
  files.reduce((total, { bytes }) => total + bytes, 0);

async function repeatBuilds({ workshop, repeats }: Bench, site: MadeUpSite): Promise<readonly Build[]> {
  const builds = [site.build];
  while (builds.length < Math.min(repeats, MOST_BUILDS)) {
    progress(`building the site of ${HOUSE.runs} runs again …`);
    const folder = workshop.place("site-again");
    builds.push(await buildInChild(site.logs.folder, folder));
    rmSync(folder, { recursive: true });
  }
  return builds;
}

/** What lies in the built site, by its top folders. */
function sizeRows(files: readonly SiteFile[]): string[][] {
  const parts: readonly (readonly [string, (path: string) => boolean])[] = [
    ["pages", (path) => path.endsWith(".html")],
    ["tables", (path) => path.startsWith("tables/") && !path.startsWith("tables/readings/")],
    ["readings, a file a load", (path) => path.startsWith("tables/readings/")],
    ["engine", (path) => path.startsWith("engine/")],
  ];
  const rows = parts.map(([name, has]) => [name, files.filter(({ path }) => has(path))] as const);
  const named = new Set(rows.flatMap(([, own]) => own));
  const all = [...rows, ["scripts, styles, fonts", files.filter((file) => !named.has(file))] as const];
  return [...all, ["all", files] as const].map(([name, own]) => [name, String(own.length), megabytes(sum(own))]);
}

async function viewRows(site: MadeUpSite, kinds: readonly PageKind[]): Promise<string[][]> {
  const { server, address } = await serveFolder(site.folder, 0);
  const browser = await openBrowser();
  const rows: string[][] = [];
  try {
    for (const { kind, pages, heaviest, bytes } of kinds) {
      const view = await firstView(browser, site.folder, `${address}${heaviest}`);
      const parts = PARTS_OF_A_VIEW.map((part) => view[part]);
      const whole = parts.reduce((total, part) => total + part, 0);
      const raw = [median(bytes), Math.max(...bytes)];
      rows.push([kind, String(pages), ...[...parts, whole, ...raw].map(kilobytes)]);
    }
  } finally {
    await browser.close();
    server.closeAllConnections();
    server.close();
  }
  return rows;
}

/** What it takes to build the site of 2,000 runs with readings, what comes out, and what a reader's first view transfers. */
export async function benchBuild(bench: Bench): Promise<void> {
  const site = await bench.workshop.site(HOUSE);
  const builds = await repeatBuilds(bench, site);
  const files = siteFiles(site.folder);
  const readings = site.logs.files.filter(({ path }) => path.startsWith("readings/"));
  printTable(
    `Build: ${HOUSE.runs} runs over ${HOUSE.years} years, with readings a minute apart`,
    [
      `Logs of ${megabytes(sum(site.logs.files))} MB, ${megabytes(sum(readings))} MB of them readings; wall time from starting Node to its end,`,
      "most memory held at once as the operating system counts it.",
    ],
    SPREAD_HEADINGS,
    [
      spreadCells(
        "wall time",
        "s",
        builds.map(({ seconds }) => seconds),
        1,
      ),
      spreadCells(
        "peak memory",
        "MB",
        builds.map(({ peakMegabytes }) => peakMegabytes),
        0,
      ),
    ],
  );
  printTable("Size of the built site", ["As it lies on the disk."], ["", "files", "MB"], sizeRows(files));
  progress("opening a page of each kind …");
  const kinds = pageKinds(site.folder, files);
  const runPages = kinds.find(({ kind }) => kind === RUN_PAGES)?.bytes ?? [];
  const overAim = runPages.filter((bytes) => bytes > RUN_PAGE_AIM_BYTES).length;
  printTable(
    "First view of a page, gzipped",
    [
      "kB that an empty browser is sent, text gzipped, of the heaviest page of each kind; aim: under 200 kB each.",
      "Raw: the middle and the largest page of that kind on the disk. Aim for a run's page: under 25 kB raw;",
      `${overAim} of ${runPages.length} are over it.`,
    ],
    ["page", "pages", ...PARTS_OF_A_VIEW, "sum", "raw median", "raw max"],
    await viewRows(site, kinds),
  );
}
