import type { Workshop } from "./workshop.ts";

/** What every part of the bench is given. */
export interface Bench {
  /** How often a measure is taken. */
  readonly repeats: number;
  /** How many simulated houses the intervals are tried on. */
  readonly seeds: number;
  readonly workshop: Workshop;
}
