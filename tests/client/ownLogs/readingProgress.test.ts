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
    expect(told[0]).toEqual({ received: 0, total: 1000, loads: 0, ofLoads: 0, step: null });
    expect(told.at(-1)).toEqual({ received: 1000, total: 1000, loads: 1, ofLoads: 3, step: null });
  });

  it("tells a step at once when it begins, and no more of it once bytes come again or it is done", () => {
    const told: ReadingProgress[] = [];
    const { onBytes, onStep } = readingTeller((progress) => told.push(progress));
    onBytes(0, 1000);
    onStep({ name: "joining" });
    onStep({ name: "ordering", rows: 0, of: 40 });
    expect(told.map(({ step }) => step)).toEqual([null, { name: "joining" }, { name: "ordering", rows: 0, of: 40 }]);
    onStep({ name: "ordering", rows: 40, of: 40 });
    onBytes(1000, 1000);
    expect(told.at(-1)?.step).toBeNull();
    onStep({ name: "ordering", rows: 0, of: 0 });
    expect(told.at(-1)?.step).toBeNull();
  });
});

describe("progressText(progress)", () => {
  const step = null;
  const ordering = { name: "ordering", rows: 17, of: 50 } as const;
  it.each([
    [{ received: 0, total: 52_400_000, loads: 0, ofLoads: 0, step }, "Reading your logs: 0.0 of 52.4 MB"],
    [
      { received: 100_000, total: 52_400_000, loads: 0, ofLoads: 0, step: { name: "joining" } as const },
      "Reading your logs: 0.1 of 52.4 MB; joining them batch by batch",
    ],
    [
      { received: 31_000_000, total: 52_400_000, loads: 12, ofLoads: 190, step },
      "Reading your logs: 31.0 of 52.4 MB, 12 of 190 loads summed up",
    ],
    [
      { received: 31_000_000, total: 52_400_000, loads: 12, ofLoads: 190, step: ordering },
      "Reading your logs: 31.0 of 52.4 MB; putting readings in order, 34 %, 12 of 190 loads summed up",
    ],
    [{ received: 52, total: 52, loads: 0, ofLoads: 190, step }, "All read; summing the loads up"],
    [{ received: 52, total: 52, loads: 0, ofLoads: 190, step: ordering }, "All read; putting readings in order, 34 %"],
    [{ received: 52, total: 52, loads: 88, ofLoads: 190, step }, "All read, 88 of 190 loads summed up"],
    [
      { received: 52, total: 52, loads: 88, ofLoads: 190, step: { name: "gathering" } as const },
      "All read and summed up; putting the pages together",
    ],
    [{ received: 52, total: 52, loads: 190, ofLoads: 190, step }, "All read and summed up; putting the pages together"],
  ])("of %j", (progress, text) => {
    expect(progressText({ kind: "progress", part: "reading", ...progress }).replaceAll("\u00a0", " ")).toBe(text);
  });
});
