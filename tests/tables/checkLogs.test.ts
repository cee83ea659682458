import { spawnSync } from "node:child_process";
import { mkdirSync, mkdtempSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { dirname, join } from "node:path";
import { afterAll, describe, expect, test } from "vitest";
import type { FileTexts } from "./logsOf.ts";

const made: string[] = [];
afterAll(() => {
  for (const folder of made) rmSync(folder, { recursive: true });
});

function onDisk(files: FileTexts): string {
  const folder = mkdtempSync(join(tmpdir(), "logs-"));
  made.push(folder);
  for (const [path, content] of Object.entries(files)) {
    mkdirSync(dirname(join(folder, path)), { recursive: true });
    writeFileSync(join(folder, path), content);
  }
  return folder;
}

const check = (...words: string[]) => {
  const { status, stdout, stderr } = spawnSync(process.execPath, ["scripts/check-logs.ts", ...words], {
    encoding: "utf8",
  });
  return { status, stdout, stderr };
};

describe("scripts/check-logs.ts", () => {
  test("ends with 0 where nothing was set aside, notes or not", () => {
    const { status, stdout } = check(
      onDisk({ "house.toml": "", "customers.csv": "customer,share,mood\nC1,yes,calm\n" }),
    );
    expect(status).toBe(0);
    expect(stdout).toContain("customers.csv: 1 row read");
    expect(stdout).toContain("unknown-column");
  });

  test("ends with 1 where a row was set aside, and prints the fault under its file", () => {
    const folder = onDisk({ "house.toml": "", "readings/a.csv": "kiln,at,air_on_c\nK1,2026-03-08 06:00,hot\n" });
    const { status, stdout } = check(folder);
    expect(status).toBe(1);
    expect(stdout).toMatch(
      /readings\/a\.csv: 0 rows read, 1 row set aside\n {2}line 2, air_on_c: “hot” is not a number\./,
    );
  });

  test("prints problems for machines with --json", () => {
    const { status, stdout } = check(onDisk({ "house.toml": "", "kilning.csv": "run\n" }), "--json");
    expect(status).toBe(1);
    const { files, problems } = JSON.parse(stdout);
    expect(files).toMatchObject([{ path: "house.toml" }, { path: "kilning.csv", rows: 0 }]);
    expect(problems[0]).toMatchObject({
      file: "kilning.csv",
      line: 1,
      rule: "needed-column-missing",
      effect: "file-set-aside",
    });
  });

  test("ends with 2 where the folder cannot be read or none is named", () => {
    expect(check("no/such/folder")).toMatchObject({ status: 2, stdout: "" });
    expect(check()).toMatchObject({ status: 2, stdout: "" });
  });
});

describe("scripts/check-logs.ts --match", () => {
  const text = "Time;Air in °C\n08.03.2026 10:00;54,5\n13.03.2026 10:01;55,5\n";
  const house = '[[kilns]]\nid = "K1"\n';

  test("prints a columns.toml that reads the file when it is saved beside it", () => {
    const folder = onDisk({ "house.toml": house, "export 2026-03.csv": text });
    const { status, stdout } = check(folder, "--match", "export 2026-03.csv");
    expect(status).toBe(0);
    writeFileSync(join(folder, "columns.toml"), stdout);
    const read = check(folder);
    expect(read.status).toBe(0);
    expect(read.stdout).toContain("export 2026-03.csv: 2 rows read");
    expect(read.stdout).toContain("columns.toml: how other columns are read");
  });

  test("ends with 1 where a file looks like no table, and with 2 where it is not there", () => {
    const folder = onDisk({ "house.toml": house, "letter.csv": "Dear brewer\nall is well\n" });
    expect(check(folder, "--match", "letter.csv").status).toBe(1);
    const gone = check(folder, "--match", "gone.csv");
    expect(gone.status).toBe(2);
    expect(gone.stderr).toContain("no file gone.csv");
  });
});
