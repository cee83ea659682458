import { spawnSync } from "node:child_process";
import { readdirSync, readFileSync } from "node:fs";
import { join } from "node:path";
import { projectRoot } from "./sourceFiles.ts";

export interface ShareRun {
  readonly status: number | null;
  /** Everything that the command said. */
  readonly said: string;
}

/** Runs the share command as its owner does, in a process of its own. */
export function shareInChild(...args: readonly string[]): ShareRun {
  const { status, stdout, stderr } = spawnSync(process.execPath, ["scripts/share.ts", ...args], {
    cwd: projectRoot,
    encoding: "utf8",
    env: { ...process.env, NODE_ENV: "production", ASTRO_TELEMETRY_DISABLED: "1" },
  });
  return { status, said: `${stdout}${stderr}` };
}

/** Every file below a folder, by its path inside with `/` between parts. */
export function everyFile(folder: string): ReadonlyMap<string, Buffer> {
  const files = readdirSync(folder, { recursive: true, withFileTypes: true }).filter((entry) => entry.isFile());
  return new Map(
    files.map((entry) => {
      const path = join(entry.parentPath, entry.name);
      return [path.slice(folder.length + 1).replaceAll("\\", "/"), readFileSync(path)] as const;
    }),
  );
}

/** The keys in a customers.csv, by customer: the columns are found by their headings, and no cell is quoted. */
export function keysIn(folder: string): ReadonlyMap<string, string> {
  const [header = "", ...rows] = readFileSync(join(folder, "customers.csv"), "utf8").trimEnd().split(/\r?\n/);
  const headings = header.split(",");
  const cells = rows.map((row) => row.split(","));
  return new Map(
    cells.flatMap((row) => {
      const key = row[headings.indexOf("link_key")] ?? "";
      return key === "" ? [] : [[row[headings.indexOf("customer")] ?? "", key] as const];
    }),
  );
}
