import { describe, expect, it } from "vitest";
import { type ReadingProgress, readingTeller } from "../../../src/client/ownLogs/readingProgress.ts";
import { progressText } from "../../../src/client/progressSlots.ts";

describe("readingTeller(tell)", () => {
  it("tells bytes and loads together, no more often than a page is drawn, and that all is read at once", () => {
    const told: ReadingProgress[] = [];
    const { onBytes, onLoad } = readingTeller((progress) => told.push(progress));
    const from = performance.now();
    for (let at = 0; at < 1000; at += 1) onBytes(at, 1000);
    onLoad(1, 3);
    onBytes(1000, 1000);
    const frames = ((performance.now() - from) / 1000) * 30;
    expect(told.length).toBeLessThanOrEqual(2 + Math.ceil(frames));
    expect(told[0]).toEqual({ received: 0, total: 1000, loads: 0, ofLoads: 0 });
    expect(told.at(-1)).toEqual({ received: 1000, total: 1000, loads: 1, ofLoads: 3 });
  });
});

describe("progressText(progress)", () => {
  it.each([
    [{ received: 0, total: 52_400_000, loads: 0, ofLoads: 0 }, "Reading your logs: 0.0 of 52.4 MB"],
    [
      { received: 31_000_000, total: 52_400_000, loads: 12, ofLoads: 190 },
      "Reading your logs: 31.0 of 52.4 MB, 12 of 190 loads summed up",
    ],
    [{ received: 52, total: 52, loads: 0, ofLoads: 190 }, "All read; summing the loads up"],
    [{ received: 52, total: 52, loads: 88, ofLoads: 190 }, "All read; summing the loads up: 88 of 190"],
    [{ received: 52, total: 52, loads: 190, ofLoads: 190 }, "All read and summed up; putting the pages together"],
  ])("of %j", (progress, text) => {
    expect(progressText({ kind: "progress", part: "reading", ...progress }).replaceAll("\u00a0", " ")).toBe(text);
  });
});
