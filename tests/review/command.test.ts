import { execFile } from "node:child_process";
import { cpSync, mkdtempSync, readdirSync, rmSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { describe, expect, it } from "vitest";

interface Ended {
  readonly status: number;
  readonly out: string;
  readonly said: string;
}

/** `npm run review -- …` without npm. */
function review(...words: readonly string[]): Promise<Ended> {
  return new Promise((done) => {
    const options = { maxBuffer: 64 * 1024 * 1024 };
    execFile(process.execPath, ["scripts/review.ts", ...words], options, (error, out, said) => {
      done({ status: typeof error?.code === "number" ? error.code : 0, out, said });
    });
  });
}

describe("npm run review", () => {
  it("prints a month that has something to look at as text, and ends with 1", { timeout: 60_000 }, async () => {
    const { status, out } = await review("2026-03");
    expect(status).toBe(1);
    expect(out).toContain("March 2026 in review");
    expect(out).toContain("To look at");
    for (const line of out.split("\n")) expect(line.length, line).toBeLessThanOrEqual(80);
  });

  it("prints a quiet month as JSON with the other pages' numbers, and ends with 0", { timeout: 60_000 }, async () => {
    const { status, out } = await review("2025-08", "--json");
    const json = JSON.parse(out) as Record<string, unknown> & { readonly pages: Record<string, unknown> };
    expect(status).toBe(0);
    expect(json).toMatchObject({ format: 1, month: "2025-08", quiet: true, findings: [] });
    for (const page of [
      "kilnHours",
      "yieldMoisture",
      "thermostat",
      "varieties",
      "steepGermination",
      "changes",
      "logs",
    ]) {
      expect(json.pages[page], page).toBeTypeOf("object");
    }
  });

  it.each([
    ["a month that the logs do not hold", ["2019-01"], /hold no 2019-01: they reach from/],
    ["what is no month", ["yesterday"], /Name one month as 2026-09/],
    ["a folder that is not there", ["--logs", "no-such-folder"], /There is no folder no-such-folder/],
    ["an option that it does not know", ["--mail"], /--mail/],
  ] as const)("refuses %s in a sentence, and ends with 2", { timeout: 60_000 }, async (_, words, sentence) => {
    const { status, out, said } = await review(...words);
    expect(status).toBe(2);
    expect(out).toBe("");
    expect(said).toMatch(sentence);
    expect(said).not.toContain("    at ");
  });

  it("says of logs without a batch off the kiln that there is none, and ends with 2", { timeout: 60_000 }, async () => {
    const folder = mkdtempSync(join(tmpdir(), "review-"));
    for (const name of readdirSync("data/templates").filter((file) => file.endsWith(".csv"))) {
      cpSync(join("data/templates", name), join(folder, name));
    }
    const { status, said } = await review("--logs", folder);
    rmSync(folder, { recursive: true });
    expect(status).toBe(2);
    expect(said).toContain("No batch has left the kiln yet");
  });
});
