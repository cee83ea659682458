import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { askedCsv } from "../../src/tables/askedText.ts";
import { guardedText } from "../../src/tables/guardedCsv.ts";
import { logText } from "../../src/tables/logsOut.ts";
import { tableOfAnswer } from "../../src/tables/tableOfAnswer.ts";

/** OWASP ASVS 5.0, requirement 1.2.10, and CWE-1236 list these beginnings; tab and carriage return among them. */
const BEGINNINGS = ["=", "+", "-", "@", "\t", "\r"];

describe("guardedText(text)", () => {
  test.each(["=1+1", "+cmd", "-cmd|' /C calc'!A0", "@SUM(A1)", "\t=1", "\r=1", "-", "+1-1", "=5", "--5"])(
    "puts an apostrophe before %j",
    (text) => {
      expect(guardedText(text)).toBe(`'${text}`);
    },
  );

  test.each(["-5", "-0.25", "12", "1e-7", "", "24-117", "a=b", "'=1"])("leaves %j as it is", (text) => {
    expect(guardedText(text)).toBe(text);
  });

  test("leaves no text that begins as a formula unless it is a number", () => {
    fc.assert(
      fc.property(fc.constantFrom(...BEGINNINGS), fc.string(), (first, rest) => {
        const safe = guardedText(first + rest);
        return safe.startsWith("'") || Number.isFinite(Number(safe));
      }),
    );
  });
});

const answer = {
  columns: [
    { name: "run", kind: "text" as const },
    { name: "place", kind: "text" as const },
    { name: "moisture_pct", kind: "number" as const },
  ],
  rows: [
    ["24-001", "=HYPERLINK(1)", 4.5],
    ["24-002", null, -0.5],
  ],
  more: false,
};

describe("files made of an answer", () => {
  test("a log guards its texts and keeps its numbers", () => {
    expect(logText(tableOfAnswer("moisture-samples", answer))).toBe(
      "run,place,moisture_pct\n24-001,'=HYPERLINK(1),4.5\n24-002,,-0.5\n",
    );
  });

  test("an answer's own file guards texts and headings", () => {
    const renamed = { ...answer, columns: answer.columns.map((c) => (c.name === "run" ? { ...c, name: "=run" } : c)) };
    expect(askedCsv(renamed)).toBe("'=run,place,moisture_pct\r\n24-001,'=HYPERLINK(1),4.5\r\n24-002,,-0.5\r\n");
  });

  test("writes times as the question gave them, to the second, and dates without a clock", () => {
    const at = Date.UTC(2026, 2, 8, 6, 30, 5);
    expect(
      askedCsv({
        columns: [
          { name: "t", kind: "instant" },
          { name: "d", kind: "date" },
        ],
        rows: [[at, Date.UTC(2026, 2, 8)]],
        more: false,
      }),
    ).toBe("t,d\r\n2026-03-08 06:30:05,2026-03-08\r\n");
  });
});
