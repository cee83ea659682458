// Writes data/README.md and the empty logs in data/templates from the declarations in src/tables.
//
//   node scripts/setup.mjs scripts/write-data-readme.ts

import { mkdirSync, readFileSync, writeFileSync } from "node:fs";
import { dirname, join } from "node:path";
import { fileURLToPath } from "node:url";
import { describeRules, describeTables, templateCsv, templatePath } from "../src/tables/describeFormat.ts";
import { tableDeclarations } from "../src/tables/tableDeclarations.ts";

const root = join(dirname(fileURLToPath(import.meta.url)), "..");

const preamble = readFileSync(join(root, "scripts/data-readme.md"), "utf8");
writeFileSync(
  join(root, "data/README.md"),
  preamble.replace("{{tables}}", describeTables).replace("{{rules}}", describeRules),
);
for (const declaration of tableDeclarations) {
  const path = join(root, "data/templates", templatePath(declaration));
  mkdirSync(dirname(path), { recursive: true });
  writeFileSync(path, templateCsv(declaration));
}
console.log(`Wrote data/README.md and ${tableDeclarations.length} empty logs in data/templates.`);
