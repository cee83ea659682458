import type { Sentence } from "./sentence.ts";

/** Where a finding comes from, in words and as an address within the site. */
export interface FindingEvidence {
  /** What was seen: a sentence with number, unit and interval. */
  readonly seen: Sentence;
  /** Path of the page from the site's root, with its anchor. */
  readonly path: string;
  /** In time order; the latest of them where there are many. */
  readonly runs: readonly string[];
  readonly runCount: number;
  /** Logged about those days, in words. */
  readonly beside: readonly string[];
}

/** One thing to look at, as the month's review, the pages and the terminal all say it. */
export interface Finding {
  /** The same from month to month while it is the same trouble: cause and what it is about. */
  readonly id: string;
  /** What, with the number, its unit and interval. */
  readonly what: Sentence;
  /** How sure, in words; and as the chance that it is real, 0 to 1, by which it is ranked. */
  readonly howSure: Sentence;
  readonly chanceReal: number;
  /** What it costs or risks, in the owner's terms; and a month in the house's currency, null without [costs]. */
  readonly cost: Sentence;
  readonly costAMonth: number | null;
  readonly evidence: readonly FindingEvidence[];
  /** What to check first, in order. */
  readonly checkFirst: readonly string[];
  /** First and last moment concerned. */
  readonly from: number;
  readonly to: number;
}
