import { strToU8, zipSync } from "fflate";
import { describe, expect, it } from "vitest";
import { type ChosenFile, RefusedLogs } from "../../../src/client/ownLogs/chosenFile.ts";
import { logsRoot } from "../../../src/client/ownLogs/logsRoot.ts";
import { ownLogFiles } from "../../../src/client/ownLogs/ownLogFiles.ts";
import { readLogs } from "../../../src/tables/readLogs.ts";

const file = (path: string, text: string | Uint8Array<ArrayBuffer>): ChosenFile => ({ path, blob: new Blob([text]) });

const KILNING = "run,kiln,loaded_at\n26-1,K1,2026-03-01 10:00\n";
const READINGS = "kiln,at,air_on_c\nK1,2026-03-01 10:05,61\nK1,2026-03-01 10:10,62\n";

const limits = { all: 10_000, oneFile: 5_000 };
const asked = (more: Partial<Parameters<typeof ownLogFiles>[1]> = {}) => ({
  house: 'name = "By hand"\ntime_zone = "UTC"\n',
  limits,
  onBytes: () => {},
  ...more,
});

async function refusalOf(work: Promise<unknown>): Promise<string> {
  const error = await work.then(
    () => null,
    (thrown: unknown) => thrown,
  );
  expect(error).toBeInstanceOf(RefusedLogs);
  return error instanceof RefusedLogs ? error.message : "";
}

describe("logsRoot(paths)", () => {
  it.each([
    ["files alone", ["kilning.csv", "steeping.csv"], ""],
    ["one folder", ["logs/kilning.csv", "logs/readings/a.csv"], "logs/"],
    [
      "the folder of house.toml, with other things about it",
      ["a/b.csv", "a/logs/house.toml", "a/logs/k.csv"],
      "a/logs/",
    ],
    ["the outer of two houses", ["a/house.toml", "a/old/house.toml"], "a/"],
    ["the readings alone", ["readings/a.csv", "readings/b.csv"], ""],
    ["readings inside a folder", ["logs/Readings/a.csv", "logs/Readings/b.csv"], "logs/"],
    ["names that only begin alike", ["logs/a.csv", "logs2/b.csv"], ""],
    ["nothing", [], ""],
  ])("of %s", (_, paths, root) => {
    expect(logsRoot(paths)).toBe(root);
  });
});

describe("ownLogFiles(chosen, reading)", () => {
  it("reads a folder, a zip of the same and the files alone to the same tables", async () => {
    const inFolder = [file("shed/2026/kilning.csv", KILNING), file("shed/2026/readings/march.csv", READINGS)];
    const zip = zipSync({ "2026/kilning.csv": strToU8(KILNING), "2026/readings/march.csv": strToU8(READINGS) });
    const alone = [file("oven.csv", KILNING), file("logger download (3).csv", READINGS)];
    for (const chosen of [inFolder, [file("shed.zip", zip)], alone]) {
      const { files } = await ownLogFiles(chosen, asked());
      const { house, tables, problems } = await readLogs(files);
      expect(house.name).toBe("By hand");
      expect(tables.get("kilning")?.rowCount).toBe(1);
      expect(Array.from<unknown>(tables.get("readings")?.columns.get("air_on_c") ?? [])).toEqual([61, 62]);
      expect(problems).toEqual([]);
    }
  });

  it("takes the settings from house.toml where one came along, and litter as nothing", async () => {
    const chosen = [
      file("logs/house.toml", 'name = "Own"\ntime_zone = "UTC"\n'),
      file("logs/kilning.csv", KILNING),
      file("logs/.DS_Store", "x"),
    ];
    const { files } = await ownLogFiles(chosen, asked());
    expect(files.map(({ path }) => path)).toEqual(["house.toml", "kilning.csv"]);
    expect((await readLogs(files)).house.name).toBe("Own");
  });

  it("takes of two files at one place the one chosen last", async () => {
    const chosen = [file("kilning.csv", "run,kiln,loaded_at\n"), file("kilning.csv", KILNING)];
    const { tables } = await readLogs((await ownLogFiles(chosen, asked())).files);
    expect(tables.get("kilning")?.rowCount).toBe(1);
  });

  it("reads files with headings of their own by the columns.toml that came along", async () => {
    const match =
      '[[match]]\nfiles = "book.csv"\ntable = "kilning"\n[match.columns]\nrun = "Nr"\nkiln = "Oven"\nloaded_at = "In"\n';
    const chosen = [file("book.csv", "Nr,Oven,In\n26-1,K1,2026-03-01 10:00\n"), file("columns.toml", match)];
    const { tables, problems } = await readLogs((await ownLogFiles(chosen, asked())).files);
    expect(problems).toEqual([]);
    expect(tables.get("kilning")?.columns.get("run")).toEqual(["26-1"]);
  });

  it("tells how far reading has come, up to all bytes once readings have been read twice", async () => {
    const seen: number[] = [];
    let all = 0;
    const onBytes = (received: number, total: number) => {
      seen.push(received);
      all = total;
    };
    const { files, bytes } = await ownLogFiles(
      [file("kilning.csv", KILNING), file("readings/a.csv", READINGS)],
      asked({ onBytes }),
    );
    for (const { table, chunks } of files) {
      for (let again = table === "readings" ? 2 : 1; again > 0; again--) for await (const _ of chunks());
    }
    expect(seen).toEqual([...seen].sort((a, b) => a - b));
    expect(seen.at(-1)).toBe(all);
    expect(all).toBe(bytes);
  });

  it("refuses too much, naming how much there is and what to do, before anything is read", async () => {
    const heavy = file("readings/a.csv", READINGS.repeat(150));
    expect(await refusalOf(ownLogFiles([heavy], asked()))).toMatch(/readings\/a\.csv holds .* part it/);
    const many = [1, 2, 3].map((n) => file(`readings/${n}.csv`, READINGS.repeat(75)));
    expect(await refusalOf(ownLogFiles(many, asked()))).toMatch(/a browser has memory for about/);
    const packed = file("all.zip", zipSync({ "readings/a.csv": strToU8(READINGS.repeat(10_000)) }));
    expect(packed.blob.size).toBeLessThan(limits.all);
    expect(await refusalOf(ownLogFiles([packed], asked()))).toMatch(/a browser has memory for about/);
  });

  it("refuses what holds no log at all", async () => {
    expect(await refusalOf(ownLogFiles([], asked()))).toContain("no log among these files");
    expect(await refusalOf(ownLogFiles([file("accounts.csv", "day,amount\n")], asked()))).toContain("None of these");
  });
});
