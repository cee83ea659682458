import { execFile } from "node:child_process";
import { mkdir, mkdtemp, readdir, readFile, rm, writeFile } from "node:fs/promises";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { fileURLToPath } from "node:url";
import { afterAll, beforeAll, describe, expect, test } from "vitest";

const script = fileURLToPath(new URL("queryEach.ts", import.meta.url));

interface Outcome {
  readonly answered?: readonly object[];
  readonly refused?: string;
}

/** What came of each statement, in a child process; fewer outcomes than statements when one of them hung. */
function queryEach(folder: string, statements: readonly string[]): Promise<readonly Outcome[]> {
  return new Promise((resolve) => {
    execFile(process.execPath, [script, ...statements], { cwd: folder, timeout: 10_000 }, (_error, said) => {
      const lines = said.split("\n").filter((line) => line.startsWith("{"));
      resolve(lines.map((line) => JSON.parse(line) as Outcome));
    });
  });
}

const refusals = [
  ["a path of this machine", `SELECT * FROM read_csv('${process.execPath}')`],
  ["a path out of the folder", "SELECT * FROM read_csv('logs/../logs/on-disk.csv')"],
  ["whole files as text", `SELECT * FROM read_text('${script}')`],
  ["a listing of files", "SELECT * FROM glob('*')"],
  ["another host by path", "SELECT * FROM 'https://localhost:9/x.csv'"],
  ["another host by function", "SELECT * FROM read_csv('https://localhost:9/x.csv')"],
  ["a database file", "ATTACH 'other.db'"],
  ["a copy to a file", "COPY kept TO 'copied.csv'"],
  ["an export", "EXPORT DATABASE 'copied'"],
  ["an extension", "LOAD json"],
  ["a change of settings", "SET enable_external_access = true"],
  ["a reset of settings", "RESET lock_configuration"],
] as const;

describe("a locked database", () => {
  /** A working directory that itself has a folder `logs/`, which the engine's `logs/` must not be mistaken for. */
  let folder: string;
  let outcomes: readonly Outcome[];
  beforeAll(async () => {
    folder = await mkdtemp(join(tmpdir(), "piecebook-"));
    await mkdir(join(folder, "logs"));
    await writeFile(join(folder, "logs", "on-disk.csv"), "secret\nmarker-on-disk\n");
    const statements = refusals.map(([, sql]) => sql);
    outcomes = await queryEach(folder, ["SELECT a FROM kept", ...statements, "SELECT a FROM kept"]);
  }, 20_000);
  afterAll(() => rm(folder, { recursive: true }));

  test("answers a plain query before and after the refusals, so that these mean something", () => {
    expect(outcomes.length).toBe(refusals.length + 2);
    expect(outcomes.at(0)).toEqual({ answered: [{ a: 1 }] });
    expect(outcomes.at(-1)).toEqual({ answered: [{ a: 1 }] });
  });

  test.for(refusals.map(([what], at) => [what, at + 1] as const))("refuses %s", ([, at]) => {
    expect(outcomes[at]?.refused).toMatch(/Permission Error|Cannot change configuration/);
  });

  test.for([
    ["INSTALL", "INSTALL json; SELECT json('{}')"],
    ["AT TIME ZONE", "SELECT TIMESTAMP '2026-01-01' AT TIME ZONE 'Etc/GMT-2'"],
    ["read_parquet", "SELECT * FROM read_parquet('logs/1.parquet')"],
  ] as const)("gets no extension through %s: refused, or never answered", { timeout: 20_000 }, async ([, sql]) => {
    const [plain, reached] = await queryEach(folder, ["SELECT a FROM kept", sql]);
    expect(plain).toEqual({ answered: [{ a: 1 }] });
    expect(reached?.answered).toBeUndefined();
  });

  test("has no disk behind `logs/`: a file that lies there cannot be read or written", {
    timeout: 20_000,
  }, async () => {
    const read = "SELECT * FROM read_csv('logs/on-disk.csv', auto_detect = false, columns = {'a': 'VARCHAR'})";
    const said = await queryEach(folder, [read, "COPY kept TO 'logs/copied.csv'", "COPY kept TO 'logs/on-disk.csv'"]);
    expect(said.length).toBe(3);
    expect(JSON.stringify(said)).not.toContain("marker-on-disk");
    expect(await readdir(join(folder, "logs"))).toEqual(["on-disk.csv"]);
    expect(await readFile(join(folder, "logs", "on-disk.csv"), "utf8")).toContain("marker-on-disk");
  });
});
