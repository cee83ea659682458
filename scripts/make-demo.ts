import { mkdirSync, readdirSync, rmSync, statSync, writeFileSync } from "node:fs";
import { dirname, join } from "node:path";
import { fileURLToPath } from "node:url";
import { describeHouse } from "./demo/describe.ts";
import { simulateHouse } from "./demo/simulateHouse.ts";
import { DEMO_SEED } from "./demo/truths.ts";
import { writeLogs } from "./demo/writeLogs.ts";

/**
 * Write the invented demo house into data/demo (or the folder named), replacing what this script wrote before. Same
 * Node, same processor family: the same bytes.
 */
const target = process.argv[2] ?? fileURLToPath(new URL("../data/demo", import.meta.url));

mkdirSync(target, { recursive: true });
for (const name of readdirSync(target)) {
  if (/\.(csv|toml)$/.test(name) || name === "readings" || name === "weather")
    rmSync(join(target, name), { recursive: true });
}
let bytes = 0;
const house = simulateHouse({ seed: DEMO_SEED, readings: true });
const files = writeLogs(house);
for (const [path, text] of files) {
  const place = join(target, path);
  mkdirSync(dirname(place), { recursive: true });
  writeFileSync(place, text);
  bytes += statSync(place).size;
}
console.log(`${files.size} files, ${(bytes / 1e6).toFixed(2)} MB, in ${target}`);
for (const line of describeHouse(house)) console.log(line);
