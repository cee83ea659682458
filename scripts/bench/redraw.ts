import { readdirSync, readFileSync } from "node:fs";
import { join } from "node:path";
import { createTableSql } from "../../src/engine/loadTables.ts";
import type { PublishedLogs } from "../../src/report/publishedLogs.ts";
import { openBrowser } from "../../tests/support/browser.ts";
import { serveFolder } from "../siteServer.ts";
import { serveBare } from "./bareServer.ts";
import type { Bench } from "./bench.ts";
import { printTable } from "./printTable.ts";
import { progress } from "./progress.ts";
import { type BareLoad, type BareTable, loadBare } from "./redrawBare.ts";
import {
  type ChartRedraw,
  type LightRedraw,
  type Redraw,
  redrawByEngine,
  redrawCharts,
  redrawWithoutEngine,
  type SiteRedraw,
} from "./redrawInSite.ts";
import { STAGES } from "./redrawStages.ts";
import { SPREAD_HEADINGS, spreadCells } from "./spread.ts";
import type { LogsWanted, MadeUpSite } from "./workshop.ts";

const PAGE = "kiln-hours/";
/** What the charts' rules cost takes longest of all to work out. */
const CHARTS_PAGE = "yield-and-moisture/";

/** Ten years at the invented house's own pace, and ten years of a house at work nearly three times as often. */
const HOUSES: readonly LogsWanted[] = [
  { runs: 700, years: 10 },
  { runs: 2000, years: 10 },
];

function bareTables(folder: string): { readonly tables: readonly BareTable[]; readonly bytes: number } {
  const name = readdirSync(join(folder, "tables")).find((file) => /^published\..*\.json$/.test(file)) ?? "";
  const published = JSON.parse(readFileSync(join(folder, "tables", name), "utf8")) as PublishedLogs;
  const tables = published.tables.map((table) => ({
    address: `/site/tables/${table.file}`,
    file: `${table.name}.csv`,
    createSql: createTableSql({ ...table, csv: readFileSync(join(folder, "tables", table.file)) }, `${table.name}.csv`),
  }));
  return { tables, bytes: published.tables.reduce((sum, { bytes }) => sum + bytes, 0) };
}

interface Visits {
  readonly site: SiteRedraw[];
  readonly charts: (SiteRedraw & ChartRedraw)[];
  readonly light: LightRedraw[];
  readonly bare: BareLoad[];
  readonly packed: BareLoad[];
}

/** Takes turns, so that whatever else the machine does meets all of them alike. */
async function visit(site: MadeUpSite, tables: readonly BareTable[], repeats: number): Promise<Visits> {
  const live = await serveFolder(site.folder, 0);
  const alone = await serveBare(site.folder);
  const browser = await openBrowser();
  const module = readdirSync(join(site.folder, "engine")).find((file) => file.endsWith(".bin")) ?? "";
  const visits: Visits = { site: [], charts: [], light: [], bare: [], packed: [] };
  try {
    for (let i = 0; i < repeats; i++) {
      progress(`redraw of ${site.logs.runs} runs: ${i + 1} of ${repeats} …`);
      visits.site.push(await redrawByEngine(browser, `${live.address}${PAGE}`));
      visits.bare.push(await loadBare(browser, alone.address, tables, null));
      visits.packed.push(await loadBare(browser, alone.address, tables, `/site/engine/${module}`));
      visits.charts.push(await redrawCharts(browser, `${live.address}${CHARTS_PAGE}`));
      visits.light.push(await redrawWithoutEngine(browser, `${live.address}${PAGE}`));
    }
  } finally {
    await browser.close();
    for (const { server } of [live, alone]) {
      server.closeAllConnections();
      server.close();
    }
  }
  return visits;
}

const line = (name: string, milliseconds: readonly number[]): string[] => spreadCells(name, "ms", milliseconds, 0);

const redrawLines = (name: string, redraws: readonly Redraw[]): string[][] => [
  line(
    name,
    redraws.map(({ seen }) => seen),
  ),
  line(
    "  the rest of the page too",
    redraws.map(({ whole }) => whole),
  ),
];

/** From the choice of a variety to the page drawn anew in Chromium, beside the same tables read by DuckDB-Wasm alone. */
export async function benchRedraw({ workshop, repeats }: Bench): Promise<void> {
  for (const house of HOUSES) {
    const site = await workshop.site(house);
    const { tables, bytes } = bareTables(site.folder);
    const visits = await visit(site, tables, repeats);
    const fetched = visits.site[0]?.megabytesFetched ?? Number.NaN;
    printTable(
      `Redraw: ${house.years} years, ${house.runs} runs`,
      [
        `${tables.length} tables, ${(bytes / 1e6).toFixed(2)} MB; ${fetched.toFixed(2)} MB fetched with the engine from this machine, each time with an empty cache.`,
        "Kiln hours page, where none other is named: from the use of a control to the frame that shows its answer in the window. The rest of the page",
        "follows in bits while the browser is idle; stretches of loads, which need shuffling, and how often a set of rules cries wolf",
        "come with it. Rules and batches left out are chosen with all varieties shown. What is likely to be chosen next is answered while",
        "nobody waits: the next varieties, each rule, the latest batch left out.",
      ],
      SPREAD_HEADINGS,
      [
        line(
          "first choice of a variety",
          visits.site.map(({ firstChoice }) => firstChoice.seen),
        ),
        ...STAGES.map((stage) =>
          line(
            `  ${stage}`,
            visits.site.map(({ stages }) => stages[stage]),
          ),
        ),
        line(
          "DuckDB-Wasm alone: engine, start, same tables read",
          visits.bare.map(({ loaded }) => loaded),
        ),
        line(
          "  of it until started",
          visits.bare.map(({ started }) => started),
        ),
        line(
          "the same with the engine packed as the site ships it",
          visits.packed.map(({ loaded }) => loaded),
        ),
        ...redrawLines(
          "second choice, engine up",
          visits.site.map(({ secondChoice }) => secondChoice),
        ),
        ...redrawLines(
          "third choice",
          visits.site.map(({ thirdChoice }) => thirdChoice),
        ),
        ...redrawLines(
          "loads from a day on, not foreseen",
          visits.site.map(({ fromDay }) => fromDay),
        ),
        ...redrawLines(
          "Yield and moisture: second choice, engine up",
          visits.charts.map(({ secondChoice }) => secondChoice),
        ),
        ...redrawLines(
          "Yield and moisture: third choice",
          visits.charts.map(({ thirdChoice }) => thirdChoice),
        ),
        ...redrawLines(
          "Yield and moisture: from a day on, not foreseen",
          visits.charts.map(({ fromDay }) => fromDay),
        ),
        ...redrawLines(
          "Yield and moisture: a rule more",
          visits.charts.map(({ ruleChoice }) => ruleChoice),
        ),
        ...redrawLines(
          "Yield and moisture: each variety apart, no engine",
          visits.charts.map(({ apart }) => apart),
        ),
        ...redrawLines(
          "Yield and moisture: a batch left out, not foreseen",
          visits.charts.map(({ leftOut }) => leftOut),
        ),
        ...redrawLines(
          "first keystroke of a what-if, no engine",
          visits.light.map(({ firstKeystroke }) => firstKeystroke),
        ),
        ...redrawLines(
          "first keystroke, the field entered 0.4 s before",
          visits.light.map(({ enteredBefore }) => enteredBefore),
        ),
        ...redrawLines(
          "next keystroke of a what-if",
          visits.light.map(({ nextKeystroke }) => nextKeystroke),
        ),
        ...redrawLines(
          "switch of units",
          visits.light.map(({ unitSwitch }) => unitSwitch),
        ),
      ],
    );
  }
}
