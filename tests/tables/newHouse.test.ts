import { spawnSync } from "node:child_process";
import { mkdtempSync, readdirSync, readFileSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join, relative } from "node:path";
import { unzipSync } from "fflate";
import { afterAll, describe, expect, test } from "vitest";
import { GET } from "../../src/pages/[newHouse].zip.ts";
import { newHouseFiles } from "../../src/tables/newHouse.ts";
import { tableDeclarations } from "../../src/tables/tableDeclarations.ts";
import { logsOf } from "./logsOf.ts";

const houseToml = readFileSync("data/templates/house.toml", "utf8");
const parent = mkdtempSync(join(tmpdir(), "new-house-"));
afterAll(() => rmSync(parent, { recursive: true }));

const make = (...words: string[]) =>
  spawnSync(process.execPath, ["scripts/new-house.ts", ...words], { encoding: "utf8" });

describe("newHouseFiles", () => {
  test.each(["metric", "us"] as const)(
    "in %s units are read as logs without a word, every table there",
    async (units) => {
      const logs = await logsOf(Object.fromEntries(newHouseFiles(houseToml, units)));
      expect(logs.problems).toEqual([]);
      expect([...logs.tables.keys()]).toEqual(tableDeclarations.map(({ name }) => name));
      expect(logs.house.units).toBe(units);
    },
  );

  test("for a house in US units head every column of mass, warmth and depth in them", () => {
    const headings = [...newHouseFiles(houseToml, "us")]
      .filter(([path]) => path.endsWith(".csv"))
      .flatMap(([, text]) => text.trim().split(","));
    expect(headings.filter((heading) => /_(kg|c|cm|ebc|wk)$/.test(heading) && heading !== "don_mg_kg")).toEqual([]);
    expect(headings).toEqual(expect.arrayContaining(["bed_depth_in", "grain_in_lb", "air_on_f", "colour_srm"]));
  });

  test("name every file in the README", () => {
    const files = newHouseFiles(houseToml, "metric");
    for (const path of files.keys()) if (path !== "README.txt") expect(files.get("README.txt")).toContain(path);
  });
});

describe("the zip of a new house", () => {
  test.each(["metric", "us"] as const)(
    "holds in %s units the very files that npm run new-house writes",
    async (units) => {
      const answer = await GET({ props: { units } } as Parameters<typeof GET>[0]);
      const packed = unzipSync(new Uint8Array(await answer.arrayBuffer()));
      const folder = join(parent, `as ${units}`);
      expect(make(folder, "--units", units).status).toBe(0);
      const written = readdirSync(folder, { recursive: true, withFileTypes: true }).filter((entry) => entry.isFile());
      const paths = written.map(({ parentPath, name }) =>
        relative(folder, join(parentPath, name)).replaceAll("\\", "/"),
      );
      expect(Object.keys(packed).sort()).toEqual(paths.map((path) => `logs/${path}`).sort());
      for (const path of paths) {
        expect(Buffer.from(packed[`logs/${path}`] ?? []).equals(readFileSync(join(folder, path))), path).toBe(true);
      }
    },
  );
});

describe("scripts/new-house.ts", () => {
  test("writes the folder, and a second time writes over nothing", () => {
    const folder = join(parent, "a house");
    expect(make(folder, "--units", "us").status).toBe(0);
    expect(readdirSync(folder)).toContain("kilning.csv");
    writeFileSync(join(folder, "kilning.csv"), "mine\n");
    const again = make(folder);
    expect(again.status).toBe(1);
    expect(again.stderr).toContain("kilning.csv");
    expect(readFileSync(join(folder, "kilning.csv"), "utf8")).toBe("mine\n");
    expect(readFileSync(join(folder, "house.toml"), "utf8")).toContain('units = "us"');
  });

  test("writes nothing at all where a single file of it is there", () => {
    const folder = mkdtempSync(join(parent, "one-"));
    writeFileSync(join(folder, "targets.csv"), "mine\n");
    expect(make(folder).status).toBe(1);
    expect(readdirSync(folder)).toEqual(["targets.csv"]);
  });

  test.each([[[]], [["a", "b"]], [["a", "--units", "furlongs"]], [["a", "--colour"]]])(
    "says how it is used when given %j",
    (words) => {
      const { status, stderr } = make(...words);
      expect(status).toBe(2);
      expect(stderr).toContain("npm run new-house -- DIR");
    },
  );
});
