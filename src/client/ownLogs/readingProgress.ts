import type { EnteringStep } from "../../report/enterLogs.ts";

/** How far reading a reader's own logs has come. */
export interface ReadingProgress {
  /** Bytes read. What is read twice counts by halves. */
  readonly received: number;
  /** All bytes there are. */
  readonly total: number;
  /** Loads whose readings have been summed up. */
  readonly loads: number;
  /** All loads; 0 as long as they are not known. */
  readonly ofLoads: number;
  /** What is being done while no bytes come; null while they do. */
  readonly step: EnteringStep | null;
}

/** Progress is told no more often than a page is drawn. */
const MOST_A_SECOND = 30;

/**
 * Puts bytes and loads together and tells them on, seldom enough for a page; that all is read is told at once, and so is a
 * step before it begins, since nothing can be told from the midst of one.
 */
export function readingTeller(tell: (progress: ReadingProgress) => void): {
  readonly onBytes: (received: number, total: number) => void;
  readonly onLoad: (summed: number, total: number) => void;
  readonly onStep: (step: EnteringStep) => void;
} {
  let known: ReadingProgress = { received: 0, total: 0, loads: 0, ofLoads: 0, step: null };
  let last = Number.NEGATIVE_INFINITY;
  const hear = (news: Partial<ReadingProgress>): void => {
    const before = known;
    known = { ...known, ...news };
    const justRead = known.received >= known.total && before.received < known.total;
    const begins = known.step !== null && known.step.name !== before.step?.name;
    const now = performance.now();
    if (!justRead && !begins && now - last < 1000 / MOST_A_SECOND) return;
    last = now;
    tell(known);
  };
  return {
    onBytes: (received, total) => hear({ received, total, step: null }),
    onLoad: (loads, ofLoads) => hear({ loads, ofLoads }),
    onStep: (step) => hear({ step: step.name === "ordering" && step.rows >= step.of ? null : step }),
  };
}
