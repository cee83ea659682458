import { strToU8, zipSync } from "fflate";
import { describe, expect, it } from "vitest";
import type { ChosenFile } from "../../../src/client/ownLogs/chosenFile.ts";
import { lookOver } from "../../../src/client/ownLogs/lookOver.ts";

const file = (path: string, content: string | Uint8Array<ArrayBuffer>): ChosenFile => ({
  path,
  blob: new Blob([content]),
});

const KILNING = "run,kiln,loaded_at\n26-1,K1,2026-03-01 10:00\n";
const LOGGER = "Logger 7\n\nTime;Inlet\n1.3.2026 10:00;54,5\n1.3.2026 10:01;54,6\n";
const OTHER = "Day;Out\n1.3.2026;40\n2.3.2026;41\n";

const strangersIn = async (...chosen: readonly ChosenFile[]) =>
  (await lookOver(chosen)).strangers.map(({ pattern, paths }) => [pattern, paths]);

describe("lookOver(chosen)", () => {
  it("finds the files whose headings no table has, by their paths in the logs' folder", async () => {
    const { root, house, strangers } = await lookOver([
      file("malt/house.toml", 'name = "Own"\n'),
      file("malt/kilning.csv", KILNING),
      file("malt/oven book.csv", KILNING),
      file("malt/in/logger.csv", LOGGER),
      file("malt/letter.txt", "Dear brewer,\nthe malt was fine.\nYours\n"),
      file("malt/photo.csv", new Uint8Array([0x89, 0x50, 0x4e, 0x47, 0, 0])),
    ]);
    expect(root).toBe("malt/");
    expect(house).toBe('name = "Own"\n');
    expect(strangers).toMatchObject([
      { pattern: "in/logger.csv", paths: ["in/logger.csv"], sample: { skipLines: 2, headings: ["Time", "Inlet"] } },
    ]);
  });

  it("knows a file by its headings even where its name is that of a log", async () => {
    expect(await strangersIn(file("kilning.csv", OTHER), file("readings/a.csv", LOGGER))).toEqual([
      ["kilning.csv", ["kilning.csv"]],
      ["readings/a.csv", ["readings/a.csv"]],
    ]);
  });

  it("takes files of one kind together, and none that is read in another way", async () => {
    const months = [file("log/K1-2026-01.csv", LOGGER), file("log/K1-2026-02.csv", LOGGER)];
    expect(await strangersIn(file("kilning.csv", KILNING), ...months)).toEqual([
      ["log/K1-*.csv", ["log/K1-2026-01.csv", "log/K1-2026-02.csv"]],
    ]);
    expect(await strangersIn(file("kilning.csv", KILNING), ...months, file("log/K1-2026-03.csv", KILNING))).toEqual([
      ["log/K1-2026-01.csv", ["log/K1-2026-01.csv"]],
      ["log/K1-2026-02.csv", ["log/K1-2026-02.csv"]],
    ]);
    expect(await strangersIn(file("a-2026-01.csv", LOGGER), file("a-2026-02.csv", OTHER))).toEqual([
      ["a-2026-01.csv", ["a-2026-01.csv"]],
      ["a-2026-02.csv", ["a-2026-02.csv"]],
    ]);
  });

  it("finds what a columns.toml says how to read, with what it says, in a zip as well", async () => {
    const matches = '[[match]]\nfiles = "a-*.csv"\ntable = "readings"\n';
    const zip = zipSync({
      "logs/columns.toml": strToU8(matches),
      "logs/a-2026-01.csv": strToU8(LOGGER),
      "logs/b.csv": strToU8(OTHER),
    });
    const looked = await lookOver([file("logs.zip", zip)]);
    expect(looked).toMatchObject({ root: "logs/", matches, house: null });
    expect(looked.strangers.map(({ pattern, matches: own }) => [pattern, own.length])).toEqual([
      ["b.csv", 0],
      ["a-*.csv", 1],
    ]);
  });

  it("looks at no more than the beginning of a file, up to the end of a line", async () => {
    const long = `${LOGGER}${"1.3.2026 10:02;54,7\n".repeat(20_000)}`;
    const [found] = (await lookOver([file("long.csv", long)])).strangers;
    expect(found?.beginning.bytes.length).toBeLessThanOrEqual(64 * 1024);
    expect(found?.beginning.text.endsWith("54,7\n")).toBe(true);
    const wide = new Uint8Array(Buffer.from(`\ufeff${long}`, "utf16le"));
    const [utf16] = (await lookOver([file("wide.csv", wide)])).strangers;
    expect(utf16?.sample.headings).toEqual(["Time", "Inlet"]);
    expect(utf16?.beginning.text.endsWith("54,7\n")).toBe(true);
  });
});
