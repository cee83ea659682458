/** Something logged about the house itself: what was changed, repaired, calibrated, or went wrong. */
export interface EventRow {
  /** The local date it was logged for, as UTC midnight in milliseconds. */
  readonly on: number;
  readonly kind: string;
  readonly scope: string;
  readonly what: string;
  /** The log column that a change sets, where there is one. */
  readonly alters: string | null;
}
