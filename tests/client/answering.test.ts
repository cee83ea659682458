import { afterEach, beforeEach, describe, expect, it, vi } from "vitest";
import { answering } from "../../src/client/answering.ts";
import type { LoadedReport } from "../../src/client/loadedReport.ts";
import type { Foreseen, ReportWorker } from "../../src/client/workerCalls.ts";
import { packReport } from "../../src/report/packReport.ts";
import type { PartName } from "../../src/report/report.ts";
import { type View, wholeView } from "../../src/report/view.ts";
import { madeUpReport } from "../support/madeUpReport.ts";

// Nobody sees the page, so that no frame is waited for.
beforeEach(() => {
  vi.stubGlobal("document", { hidden: true });
});
afterEach(() => {
  vi.unstubAllGlobals();
});

const whole = madeUpReport(20);
const PARTS: readonly PartName[] = ["steepGermination"];
const everyRow = {
  runs: whole.runs.map((_, i) => i),
  loads: whole.loads.map((_, i) => i),
  of: { runs: whole.runs.length, loads: whole.loads.length },
};
const packed = () => packReport({ steepGermination: whole.steepGermination });
const ofVariety = (variety: string | null): View => ({ ...wholeView, variety });

/** A worker that answers at once, and guesses only when it is told to. */
function handWorker() {
  const asked: View[] = [];
  let foreseeing: { views: readonly View[]; keep: (foreseen: Foreseen) => void } | null = null;
  const worker: Pick<ReportWorker, "ask" | "foresee" | "isReady"> = {
    isReady: true,
    ask(view) {
      asked.push(view);
      return {
        report: Promise.resolve({ kind: "report", request: 1, chosen: everyRow, parts: packed() }),
        later: new Promise(() => {}),
        seen() {},
      };
    },
    foresee(views, _, keep) {
      foreseeing = { views, keep };
    },
  };
  return {
    worker,
    asked,
    foreseeing: () => foreseeing?.views ?? [],
    guess(view: View) {
      foreseeing?.keep({ kind: "foreseen", request: 2, view, chosen: everyRow, parts: packed() });
    },
  };
}

async function answers(of: ReturnType<typeof answering>, view: View): Promise<readonly LoadedReport[]> {
  const found: LoadedReport[] = [];
  for await (const report of of(view, PARTS)) found.push(report);
  // What comes after the answer comes in a turn of its own.
  await new Promise((go) => setTimeout(go));
  return found;
}

const ground = (hand: ReturnType<typeof handWorker>) => ({
  worker: hand.worker,
  whole: () => Promise.resolve(whole),
  built: null,
});

describe("answering views", () => {
  it("asks the worker once for a view, and gives the same object afterwards", async () => {
    const hand = handWorker();
    const of = answering(ground(hand));
    const [first] = await answers(of, ofVariety("A"));
    const [again] = await answers(of, ofVariety("A"));
    expect(first?.steepGermination).toEqual(whole.steepGermination);
    expect(again).toBe(first);
    expect(hand.asked).toHaveLength(1);
  });

  it("has what is likely next answered once the answer is drawn, and then asks for it no more", async () => {
    const hand = handWorker();
    const of = answering(ground(hand));
    await answers(of, ofVariety(whole.choices.varieties[0] ?? null));
    const [next] = hand.foreseeing();
    if (next === undefined) throw new Error("nothing was foreseen");
    hand.guess(next);
    const [found] = await answers(of, next);
    expect(found?.steepGermination).toEqual(whole.steepGermination);
    expect(hand.asked).toHaveLength(1);
  });

  it("foresees nothing that it has already", async () => {
    const hand = handWorker();
    const of = answering(ground(hand));
    const view = ofVariety(whole.choices.varieties[0] ?? null);
    await answers(of, view);
    const [next] = hand.foreseeing();
    if (next === undefined) throw new Error("nothing was foreseen");
    hand.guess(next);
    await answers(of, next);
    const asText = hand.foreseeing().map((one) => JSON.stringify(one));
    expect(asText).not.toContain(JSON.stringify(view));
    expect(asText).not.toContain(JSON.stringify(next));
  });

  it("starts no worker for a guess", async () => {
    const hand = handWorker();
    const built = { with: () => Promise.resolve(whole) };
    const idle = { ...hand.worker, isReady: false };
    await answers(answering({ ...ground(hand), worker: idle, built }), wholeView);
    expect(hand.foreseeing()).toEqual([]);
    expect(hand.asked).toEqual([]);
  });

  it("guesses nothing for an answer that nobody looks at any more", async () => {
    const hand = handWorker();
    const of = answering(ground(hand));
    for await (const _ of of(ofVariety("A"), PARTS)) break;
    await new Promise((go) => setTimeout(go));
    expect(hand.foreseeing()).toEqual([]);
  });
});
