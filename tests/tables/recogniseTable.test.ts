import { describe, expect, it } from "vitest";
import { fileNames } from "../../src/tables/insideName.ts";
import { readLogs } from "../../src/tables/readLogs.ts";
import { recogniseFile, recogniseTable, tableInFile } from "../../src/tables/recogniseTable.ts";
import { tableDeclarations } from "../../src/tables/tableDeclarations.ts";
import { textFiles } from "../support/textFiles.ts";

const fileOf = (path: string, content: string | Uint8Array) => ({
  path,
  async *chunks() {
    yield typeof content === "string" ? new TextEncoder().encode(content) : content;
  },
});

describe("recogniseTable(headings)", () => {
  it.each(tableDeclarations)("knows $name by all its columns and by the needed ones alone", ({ name, columns }) => {
    const headings = (all: typeof columns) => all.map((column) => fileNames(column).at(-1)?.name ?? "");
    expect(recogniseTable(headings(columns))).toBe(name);
    expect(recogniseTable(headings(columns.filter(({ needed }) => needed)))).toBe(name);
  });

  it("knows a table by headings in capitals, in any order and beside columns of the house's own", () => {
    expect(recogniseTable(["Colour of the sky", "LOADED_AT", "Kiln", "run"])).toBe("kilning");
  });

  it("leaves alone what fits no table", () => {
    expect(recogniseTable(["date", "amount", "paid by"])).toBeNull();
    expect(recogniseTable([])).toBeNull();
  });
});

describe("tableInFile(file)", () => {
  it.each([
    ["commas", "run,kiln,loaded_at\n1,K1,2026-01-01 10:00\n"],
    ["semicolons after a spreadsheet's sep= line", "sep=;\r\nrun;kiln;loaded_at\r\n1;K1;2026-01-01 10:00\r\n"],
    ["tabs and blank lines before the headings", "\n\nrun\tkiln\tloaded_at\n"],
    ["a byte order mark", "\ufeffrun,kiln,loaded_at\n"],
    ["headings alone, without a line's end", "run,kiln,loaded_at"],
  ])("reads headings with %s", async (_, text) => {
    expect(await tableInFile(fileOf("Oven book 2026.csv", text))).toBe("kilning");
  });

  it("reads headings of UTF-16 with its mark, and of a file with letters of Windows-1252 further down", async () => {
    const text = "\ufeffrun,kiln,loaded_at\n";
    const utf16 = new Uint8Array(new Uint16Array([...text].map((letter) => letter.charCodeAt(0))).buffer);
    expect(await tableInFile(fileOf("a.csv", utf16))).toBe("kilning");
    const old = new Uint8Array([...new TextEncoder().encode("run,kiln,loaded_at,note\n1,K1,,"), 0xfc, 0x0a]);
    expect(await tableInFile(fileOf("b.csv", old))).toBe("kilning");
  });

  it("lets the name decide where the headings fit it, and the headings where they do not", async () => {
    expect(await tableInFile(fileOf("lab.csv", "run,tested_on,moisture_pct\n"))).toBe("lab");
    expect(await tableInFile(fileOf("lab.csv", "run,kiln,loaded_at\n"))).toBe("kilning");
    // Nothing fits: the reader of that table says what is missing.
    expect(await tableInFile(fileOf("lab.csv", "run,day\n"))).toBe("lab");
    expect(await recogniseFile(fileOf("lab.csv", "run,day\n"))).toEqual({ table: "lab", byHeadings: false });
  });

  it("says nothing of what is no text", async () => {
    expect(await tableInFile(fileOf("photo.csv", new Uint8Array([0x89, 0x50, 0x4e, 0x47, 0, 0, 0, 0])))).toBeNull();
  });
});

describe("readLogs(files) of files whose table is known", () => {
  it("reads them under their own names, several to a table", async () => {
    const given = textFiles({
      "house.toml": 'name = "House"\ntime_zone = "UTC"\n',
      "kiln 2025.csv": "run,kiln,loaded_at\n25-1,K1,2025-03-01 10:00\n",
      "kiln 2026.csv": "run,kiln,loaded_at\n26-1,K1,2026-03-01 10:00\n26-2,K1,soon\n",
    });
    const files = given.map((file) => (file.path.startsWith("kiln") ? { ...file, table: "kilning" as const } : file));
    const { tables, problems } = await readLogs(files);
    expect(tables.get("kilning")?.columns.get("run")).toEqual(["25-1", "26-1"]);
    expect(problems.filter(({ rule }) => rule === "unknown-file")).toEqual([]);
    expect(problems.find(({ effect }) => effect === "row-set-aside")).toMatchObject({
      file: "kiln 2026.csv",
      line: 3,
      column: "loaded_at",
    });
  });
});
