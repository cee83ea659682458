import { describe, expect, test } from "vitest";
import type { Note } from "../../scripts/bench/pageNotes.ts";
import { type Fetched, STAGES, stageTimes } from "../../scripts/bench/redrawStages.ts";

const fetch = (address: string, startedAt: number, endedAt: number): Fetched => ({
  address,
  startedAt,
  endedAt,
  bytes: 1,
});
const note = (at: number, what: string): Note => ({ at, what });

const FETCHED = [
  fetch("http://h/tables/published.1.json", 110, 115),
  fetch("http://h/tables/lab.2.csv", 116, 140),
  fetch("http://h/engine/duckdb-eh-1.bin", 141, 200),
  fetch("http://h/engine/duckdb-worker-1.js", 260, 270),
];
const NOTES = [
  note(100, "used variety"),
  note(104, "report worker made"),
  note(280, "engine worker made"),
  note(900, "asked REGISTER_FILE_BUFFER"),
  note(950, "answered DROP_FILE"),
  note(955, "asked REGISTER_FILE_BUFFER"),
  note(1000, "answered DROP_FILE"),
  note(1300, "worker says ready"),
  note(1400, "worker says report"),
  note(1450, "frame shown"),
  note(1500, "frame shown"),
];

describe("stageTimes", () => {
  test("parts the time from the choice to the last frame without a gap", () => {
    const times = stageTimes(NOTES, FETCHED, "variety");
    expect(Object.values(times)).toEqual([10, 30, 60, 80, 620, 100, 300, 100, 50, 50]);
    expect(STAGES.reduce((sum, stage) => sum + times[stage], 0)).toBe(1400);
  });

  test.each(NOTES.filter(({ what }, i) => NOTES.findIndex((other) => other.what === what) === i && i !== 1))(
    "says what it misses rather than guess it: $what",
    ({ what }) => {
      const left = NOTES.filter((other) => other.what !== what);
      expect(() => stageTimes(left, FETCHED, "variety")).toThrow(/left no note of/);
    },
  );

  test("refuses moments out of their order", () => {
    const swapped = NOTES.map((made) => (made.what === "worker says ready" ? note(990, made.what) : made));
    expect(() => stageTimes(swapped, FETCHED, "variety")).toThrow(/ready was noted before/);
  });
});
