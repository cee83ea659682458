import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { usualTimeAt, writtenDate, writtenTime } from "../../src/tables/dateText.ts";

const usual = (text: string): number => usualTimeAt(text, 0, text.length);
const instant = fc.integer({ min: Date.UTC(1, 0, 1), max: Date.UTC(9999, 11, 31) }).map((ms) => ms - (ms % 1000));

describe("usualTimeAt", () => {
  test("agrees with the language's own calendar on every second of years 1 to 9999", () => {
    fc.assert(
      fc.property(instant, fc.constantFrom("T", " "), (ms, between) => {
        const iso = new Date(ms).toISOString();
        if (!/^\d{4}-/.test(iso)) return;
        expect(usual(`${iso.slice(0, 10)}${between}${iso.slice(11, 19)}`)).toBe(ms);
      }),
      { numRuns: 1000 },
    );
  });

  test.each([
    "2026-02-29 10:00",
    "2026-13-01 10:00",
    "2026-01-01 24:00",
    "2026-01-01 10:60",
    "2026-01-01",
    "2026/01/01 10:00",
  ])("leaves %j to the patient reader", (text) => {
    expect(usual(text)).toBeNaN();
  });
});

describe("writtenDate", () => {
  test.each([
    ["2026-03-08", "dmy", "2026-03-08"],
    ["8.3.2026", "dmy", "2026-03-08"],
    ["08/03/2026", "dmy", "2026-03-08"],
    ["3/8/2026", "mdy", "2026-03-08"],
    ["2026/03/08", "ymd", "2026-03-08"],
    ["29.02.2024", "dmy", "2024-02-29"],
  ] as const)("reads %j in order %s", (text, order, iso) => {
    expect(writtenDate(text, order)).toBe(Date.parse(`${iso}T00:00Z`));
  });

  test.each([
    ["08/03/2026", "ymd", "ambiguous-date"],
    ["25/03/2026", "ymd", "ambiguous-date"],
    ["03/25/2026", "dmy", "no-such-date"],
    ["29.02.2026", "dmy", "no-such-date"],
    ["2026-02-30", "ymd", "no-such-date"],
    ["08.03.26", "dmy", "year-cut-short"],
    ["46089", "dmy", "spreadsheet-date"],
    ["8 March 2026", "dmy", "not-a-date"],
    ["08.03/2026", "dmy", "not-a-date"],
  ] as const)("refuses %j in order %s: %s", (text, order, rule) => {
    expect(writtenDate(text, order)).toMatchObject({ rule });
  });
});

describe("writtenTime", () => {
  const noon = Date.UTC(2026, 2, 8, 12);
  test.each([
    ["2026-03-08 12:00", "ymd", noon, null],
    ["2026-03-08T12:00:00.000", "ymd", noon, null],
    ["8.3.2026 12:00", "dmy", noon, null],
    ["3/8/2026 12:00 PM", "mdy", noon, null],
    ["3/8/2026 12:00:00 am", "mdy", noon - 12 * 3_600_000, null],
    ["2026-03-08T12:00Z", "ymd", noon, 0],
    ["2026-03-08T12:00+02:00", "ymd", noon, 120],
    ["2026-03-08 12:00 -0530", "ymd", noon, -330],
    ["2026-03-08T12:00:30,25+01", "ymd", noon + 30_250, 60],
  ] as const)("reads %j", (text, order, localMilliseconds, offsetMinutes) => {
    expect(writtenTime(text, order)).toEqual({ localMilliseconds, offsetMinutes });
  });

  test.each([
    ["2026-03-08", "time-missing"],
    ["2026-03-08 24:00", "not-a-time"],
    ["2026-03-08 13:00 PM", "not-a-time"],
    ["2026-03-08 noon", "not-a-time"],
    ["2026-03-08 12:00+19:00", "not-a-time"],
    ["08/03/2026 12:00", "ambiguous-date"],
  ])("refuses %j: %s", (text, rule) => {
    expect(writtenTime(text, "ymd")).toMatchObject({ rule });
  });
});
