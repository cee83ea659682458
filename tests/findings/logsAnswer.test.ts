import { describe, expect, it } from "vitest";
import { counted, countedInWords, listed } from "../../src/findings/counted.ts";
import { logsAnswer, logsGrounds } from "../../src/findings/logsAnswer.ts";
import { runAnswer, runsAnswer } from "../../src/findings/runsAnswer.ts";
import { plainText, type Sentence } from "../../src/findings/sentence.ts";
import type { RunPageResult } from "../../src/report/runPageResult.ts";
import { bareRun, madeUpProblem, madeUpReport } from "../support/madeUpReport.ts";

const said = (sentence: Sentence): string => plainText(sentence).replaceAll("\u00a0", " ");

describe("counted, countedInWords, listed", () => {
  it("say counts as one would", () => {
    expect(counted(0, "load")).toBe("no loads");
    expect(counted(2, "batch", "batches")).toBe("2\u00a0batches");
    expect(countedInWords(7, "load")).toBe("Seven loads");
    expect(countedInWords(14, "load")).toBe("14\u00a0loads");
    expect(listed([])).toBe("");
    expect(listed(["a", "b", "c"])).toBe("a, b and c");
  });
});

describe("logsAnswer(logs, runs)", () => {
  const { logs } = madeUpReport(3);

  it("says what was read and what was set aside", () => {
    expect(said(logsAnswer(logs, 120))).toBe(
      "120 batches read from 2 files; 1 row was set aside and 1 value was left blank.",
    );
    expect(said(logsGrounds(logs))).toContain("1 note took nothing away");
  });

  it("says so where all is well, and where there is nothing", () => {
    const clean = {
      ...logs,
      problems: [],
      files: logs.files.map((file) => ({ ...file, rowsSetAside: 0, valuesBlanked: 0 })),
    };
    expect(said(logsAnswer(clean, 120))).toBe("120 batches read from 2 files; nothing was set aside.");
    expect(said(logsGrounds(clean))).toBe("Every row and every value passed its checks.");
    expect(said(logsAnswer({ files: [], problems: [], months: [] }, 0))).toBe("No logs were found.");
    expect(said(logsGrounds({ files: [], problems: [], months: [] }))).toContain("data/templates");
  });
});

describe("runsAnswer(runs, timeZone)", () => {
  it("spans the first and the last, and stands without dates", () => {
    expect(said(runsAnswer([], "UTC"))).toBe("These logs hold no batch yet.");
    expect(said(runsAnswer([bareRun], "UTC"))).toBe("One batch.");
    const at = (day: number) => ({ ...bareRun, loadedAt: Date.UTC(2026, 0, day) });
    expect(said(runsAnswer([at(9), at(4)], "UTC"))).toBe("Two batches from 4 Jan 2026 to 9 Jan 2026.");
  });
});

describe("runAnswer(result, units)", () => {
  const result = (
    run: Partial<RunPageResult["run"]>,
    expectedHours: RunPageResult["expectedHours"],
  ): RunPageResult => ({
    run: { ...bareRun, grain: "barley", grainInKilograms: 412, maltKilograms: 338, ...run },
    loads: [],
    curves: new Map(),
    expectedHours,
    loss: null,
    counted: null,
    problems: [],
    otherColumns: [],
    previousRun: null,
    nextRun: null,
  });

  it("calls hours unexpected only outside the interval", () => {
    const expected = { estimate: 13, low: 12, high: 14 };
    expect(said(runAnswer(result({ kilnHours: 13.6 }, expected), "metric"))).toBe(
      "412 kg of barley made 338 kg of malt. The kiln took 13.6 h, as expected of that air and bed (13.0 h).",
    );
    expect(said(runAnswer(result({ kilnHours: 15.5 }, expected), "metric"))).toContain(
      "2.5 h longer than that air and bed account for",
    );
    expect(said(runAnswer(result({ kilnHours: 11 }, expected), "metric"))).toContain("2.0 h less than");
  });

  it("says what is not logged", () => {
    expect(said(runAnswer(result({ maltKilograms: null }, null), "metric"))).toContain("no malt is logged yet");
    const unread = {
      ...result({ maltKilograms: null }, null),
      problems: [{ ...madeUpProblem, effect: "row-set-aside" as const }],
    };
    expect(said(runAnswer(unread, "metric"))).toContain("what came out could not be read");
    expect(said(runAnswer(result({ loadedAt: 1 }, null), "metric"))).toContain("It is in the kiln.");
  });
});
