// Makes the logs folder of a house that has none yet.
//
//   npm run new-house -- DIR               in kilograms, °C and centimetres
//   npm run new-house -- DIR --units us    in pounds, °F and inches
//
// Writes over nothing: where one of its files is there already it names it, writes none and ends with 1.

import { existsSync, mkdirSync, readFileSync, writeFileSync } from "node:fs";
import { dirname, join } from "node:path";
import { fileURLToPath } from "node:url";
import { parseArgs } from "node:util";
import { newHouseFiles } from "../src/tables/newHouse.ts";

const USE = "npm run new-house -- DIR [--units metric|us]";

function complain(message: string): never {
  console.error(`${message}: ${USE}`);
  process.exit(2);
}

function wordsGiven(): { readonly folder: string; readonly units: "metric" | "us" } {
  try {
    const { values, positionals } = parseArgs({ options: { units: { type: "string" } }, allowPositionals: true });
    const { units = "metric" } = values;
    const [folder, ...more] = positionals;
    if (folder === undefined || more.length > 0) complain("Say which folder is to hold the logs");
    if (units !== "metric" && units !== "us") complain(`There are no units called ${units}`);
    return { folder, units };
  } catch (error) {
    return complain(error instanceof Error ? error.message : String(error));
  }
}

const { folder, units } = wordsGiven();
const template = fileURLToPath(new URL("../data/templates/house.toml", import.meta.url));
const files = newHouseFiles(readFileSync(template, "utf8"), units);
const there = [...files.keys()].filter((path) => existsSync(join(folder, path)));
if (there.length > 0) {
  console.error(`Nothing was written: ${folder} already holds ${there.join(", ")}.`);
  process.exit(1);
}
try {
  for (const [path, text] of files) {
    mkdirSync(dirname(join(folder, path)), { recursive: true });
    // A file that came to be in the meantime is left alone too.
    writeFileSync(join(folder, path), text, { flag: "wx" });
  }
} catch (error) {
  console.error(`${folder} cannot be written: ${error instanceof Error ? error.message : String(error)}`);
  process.exit(2);
}
console.log(`${files.size} files are in ${folder}. Read README.txt there first; then: npm run check-logs -- ${folder}`);
