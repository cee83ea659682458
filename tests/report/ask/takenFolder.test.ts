import { beforeAll, describe, expect, test } from "vitest";
import { DEMO_LOGS } from "../../../scripts/buildSite.ts";
import { logFolder } from "../../../src/engine/logFolder.ts";
import { openNodeDatabase } from "../../../src/engine/node.ts";
import { takenFolder } from "../../../src/report/ask/takenFolder.ts";
import { buildReport } from "../../../src/report/buildReport.ts";
import { enterLogs } from "../../../src/report/enterLogs.ts";
import type { PublishedLogs } from "../../../src/report/publishedLogs.ts";
import type { Report } from "../../../src/report/report.ts";
import { wholeView } from "../../../src/report/view.ts";
import type { LogFile } from "../../../src/tables/logFile.ts";
import { textFile } from "../../../src/tables/writeUp/textFile.ts";
import { farthestApart } from "../../support/farthestApart.ts";
import { goodHouse } from "../../tables/goodHouse.ts";
import { type FileTexts, folderOf } from "../../tables/logsOf.ts";
import "../../support/matchers.ts";

/** Some hours after the last load of the good house; the demo's logs end years before any clock. */
const NOW = Date.UTC(2026, 3, 1);

interface Told {
  readonly report: Report;
  readonly published: PublishedLogs;
  /** The same logs as the page saves them. */
  readonly taken: readonly LogFile[];
}

/** Reads logs, makes the whole report of them, and takes them away. */
async function tell(files: Iterable<LogFile>): Promise<Told> {
  const database = await openNodeDatabase([]);
  try {
    const { published, readings } = await enterLogs(files, database, { invented: false, now: NOW });
    const taken: LogFile[] = [];
    const parts = takenFolder({
      published,
      ask: (sql) => database.ask(sql, { mostRows: Number.POSITIVE_INFINITY }),
      readings: async (file) => new TextDecoder().decode(readings.get(file)),
    });
    for await (const { path, text } of parts) taken.push(textFile(path, text));
    return { report: await buildReport(database, published, wholeView, { everyMonth: false }), published, taken };
  } finally {
    await database.close();
  }
}

/**
 * All that pages are made of but what is of the files themselves: their list, what was wrong in them, the name of a load's own
 * file, and how many readings a month has, since those of no load stay behind.
 */
function withoutFiles({ logs, loads, ...rest }: Report): unknown {
  return {
    ...rest,
    months: logs.months.map(({ rows: { readings: _, ...rows }, ...month }) => ({ ...month, rows })),
    loads: loads.map(({ readingsFile: _, ...load }) => load),
  };
}

const withProblem = (text: string): string => `${text.trimEnd()}\nno such moment,K1,never\n`;

describe("takenFolder: logs taken away and read again", () => {
  let was: Told;
  let is: Told;
  beforeAll(async () => {
    was = await tell(logFolder(DEMO_LOGS));
    is = await tell(was.taken);
  }, 300_000);

  test("give the whole report of the invented house again, readings and all, number for number", () => {
    expect(was.taken.filter(({ path }) => path.startsWith("readings/")).length).toBeGreaterThan(100);
    const { relative, place, differing } = farthestApart(withoutFiles(is.report), withoutFiles(was.report));
    expect(differing).toEqual([]);
    expect(relative, place).toBeLessThanOrEqual(1e-12);
  });

  test("lose no row and blank no value", () => {
    const lost = is.published.logs.problems.filter(({ effect }) => effect !== "note");
    expect(lost.map(({ message }) => message)).toEqual([]);
  });

  test("are the same files again when they are taken away again", async () => {
    const textOf = async (file: LogFile): Promise<string> => {
      let text = "";
      for await (const chunk of file.chunks()) text += new TextDecoder().decode(chunk);
      return text;
    };
    expect(is.taken.map(({ path }) => path)).toEqual(was.taken.map(({ path }) => path));
    for (const [place, file] of is.taken.entries()) {
      expect(await textOf(file), file.path).toBe(await textOf(was.taken[place] as LogFile));
    }
  });
});

/** The good house as a muddle: other dates, decimal commas, °F and pounds, columns of its own, several probes, rows that cannot be read. */
const muddle: FileTexts = {
  ...goodHouse,
  "house.toml": `name = "Good"
time_zone = "America/Chicago"
units = "us"
date_order = "mdy"
altitude_m = 210.5
[[kilns]]
id = "K1"
floor_m2 = 5.5
probe_at_bulb = true
[[kilns]]
id = "K 2/b"
[tolerances]
thermostat_c = 1.25
final_moisture_pct = 0.4
[costs]
currency = "USD"
kwh = 0.13
[baselines]
First = ["R1"]
any = "2026-01-01 to 2026-04-01"
[checks]
logger_days = 45
[files."moisture-samples.csv"]
delimiter = ";"
decimal = ","
encoding = "windows-1252"
`,
  "moisture-samples.csv": Uint8Array.from("run;place;moisture_pct\nR1;vorn;4,4\nR1;Tür \u00fc;4,6\n", (c) =>
    c.charCodeAt(0),
  ),
  "steeping.csv": `${withProblem(goodHouse["steeping.csv"] as string)}`,
  "germination.csv": `run,bed,started_at,ended_at,bed_grain_lb,bed_mean_f,nose,weather outside
R1,B1,3/2/2026 6:30 AM,3/6/2026 6:00 AM,661.4,61.7,cucumber,
R1,B2,3/2/2026 8:10 AM,3/6/2026 6:30 AM,661.4,62.6,=apple,"rain, ""heavy"""
R2,B3,3/2/2026 8:00 PM,3/6/2026 7:00 AM,500.25,,,sun
`,
  "weather/own.csv":
    "at_utc,ambient_rh_pct,ambient_f\n2026-03-06 13:00,61,41\n2026-03-06 15:00,58,43.3\n2026-03-06 18:00,66,40\n",
  "logger-checks.csv": "kiln,at,probe,reference_f,reading_f\nK1,2026-03-01 06:00,air_on,32,32.4\n",
  "readings/one.csv": probesOf(0, 300),
  "readings/two.csv": probesOf(280, 810),
};

/** A reading a minute from the loading of load A on, with every probe there is; two files overlap. */
function probesOf(from: number, to: number): string {
  let text = "kiln,at,air_on_c,air_off_f,bed_c,air_off_rh_pct,heater_on,fan_on\n";
  for (let minute = from; minute < to; minute += 1) {
    const at = new Date(Date.UTC(2026, 2, 6, 8, minute)).toISOString().slice(0, 16).replace("T", " ");
    const drift = (minute % 12) / 10;
    const off = (68 + minute / 20).toFixed(1);
    text += `K1,${at},${(50 + drift).toFixed(1)},${off},${(30 + drift).toFixed(2)},${90 - (minute % 7)},${minute % 12 < 6 ? 1 : 0},1\n`;
  }
  return text;
}

describe("takenFolder of a house that writes otherwise", () => {
  let was: Told;
  let is: Told;
  beforeAll(async () => {
    was = await tell(folderOf(muddle));
    is = await tell(was.taken);
  }, 120_000);

  test("carries its settings, so that nothing has to be declared again", () => {
    const { tables: _, logs: __, otherColumns: ___, ...settings } = was.published;
    expect(is.published).toMatchObject(settings);
    expect(was.published).toMatchObject({
      tolerances: { final_moisture_pct: 0.4 },
      kilns: [{ id: "K1" }, { id: "K 2/b" }],
    });
  });

  test("carries its own columns to the same batches, a formula as text", () => {
    expect(was.published.otherColumns).toHaveLength(4);
    expect(is.published.otherColumns).toEqual(
      was.published.otherColumns.map((other) => (other.value === "=apple" ? { ...other, value: "'=apple" } : other)),
    );
  });

  test("gives the same report; a probe written in °F to the hundredth of a degree Celsius that its file has", () => {
    const apart = farthestApart(
      { ...(withoutFiles(is.report) as object), otherColumns: [] },
      { ...(withoutFiles(was.report) as object), otherColumns: [] },
    );
    expect(was.taken.map(({ path }) => path)).toContain("readings/A.csv");
    expect(apart.differing).toEqual([]);
    expect(apart.relative, apart.place).toBeLessThanOrEqual(0.005);
  });
});
