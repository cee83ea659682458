import { existsSync, readFileSync } from "node:fs";
import { describe, expect, test } from "vitest";
import { logFolder } from "../../src/engine/logFolder.ts";
import { describeRules, describeTables, templateCsv, templatePath } from "../../src/tables/describeFormat.ts";
import { readLogs } from "../../src/tables/readLogs.ts";
import { tableDeclarations } from "../../src/tables/tableDeclarations.ts";

const preamble = readFileSync("scripts/data-readme.md", "utf8");

describe("data/README.md", () => {
  test("says what the declarations say (run scripts/write-data-readme.ts after a change)", () => {
    const written = preamble.replace("{{tables}}", describeTables).replace("{{rules}}", describeRules);
    expect(readFileSync("data/README.md", "utf8")).toBe(written);
    expect(written).not.toContain("{{");
  });

  test("names every file and every column of the format", () => {
    const text = readFileSync("data/README.md", "utf8");
    for (const { place, columns } of tableDeclarations) {
      expect(text).toContain(`### ${place}\n`);
      for (const { stem, family } of columns) {
        for (const name of family ? family.suffixes.map(({ suffix }) => `${stem}_${suffix}`) : [stem]) {
          expect(text).toContain(`\`${name}\``);
        }
      }
    }
  });
});

describe("data/templates", () => {
  test.each(tableDeclarations.map((declaration) => [templatePath(declaration), declaration] as const))(
    "%s is the heading line of its table",
    (path, declaration) => {
      expect(existsSync(`data/templates/${path}`)).toBe(true);
      expect(readFileSync(`data/templates/${path}`, "utf8")).toBe(templateCsv(declaration));
    },
  );

  test("is read as logs without a word", async () => {
    const logs = await readLogs(logFolder("data/templates"));
    expect(logs.problems).toEqual([]);
    expect([...logs.tables.keys()]).toEqual(tableDeclarations.map(({ name }) => name));
  });
});
