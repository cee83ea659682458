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
}

/** Progress is told no more often than a page is drawn. */
const MOST_A_SECOND = 30;

/** Puts bytes and loads together and tells them on, seldom enough for a page; that all is read is told at once. */
export function readingTeller(tell: (progress: ReadingProgress) => void): {
  readonly onBytes: (received: number, total: number) => void;
  readonly onLoad: (summed: number, total: number) => void;
} {
  let known: ReadingProgress = { received: 0, total: 0, loads: 0, ofLoads: 0 };
  let last = Number.NEGATIVE_INFINITY;
  const hear = (news: Partial<ReadingProgress>): void => {
    const before = known;
    known = { ...known, ...news };
    const justRead = known.received >= known.total && before.received < known.total;
    const now = performance.now();
    if (!justRead && now - last < 1000 / MOST_A_SECOND) return;
    last = now;
    tell(known);
  };
  return {
    onBytes: (received, total) => hear({ received, total }),
    onLoad: (loads, ofLoads) => hear({ loads, ofLoads }),
  };
}
