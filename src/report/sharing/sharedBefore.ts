/** One way in which a share differs from the one before it. */
export interface ShareChange {
  readonly customer: string;
  readonly run: string;
  readonly kind: "added" | "altered" | "taken-back";
  /** What was altered, as the pages print it. */
  readonly figures: readonly { readonly name: string; readonly was: string; readonly is: string }[];
}

/** What one customer was shown. Keys and passphrases are not in it. */
export interface CustomerBefore {
  /** Date of the first share that had pages for this customer. */
  readonly since: string;
  readonly sealed: boolean;
  /** By run, then by figure: what the pages print. */
  readonly batches: Readonly<Record<string, Readonly<Record<string, string>>>>;
}

/** A batch that was not put before a customer, or was in spite of something. */
export interface BatchInQuestion {
  readonly run: string;
  readonly reasons: readonly string[];
  /** True where the owner said `--despite`. */
  readonly shared: boolean;
}

/** The record of a share, kept beside the logs as `.shared.json`. */
export interface SharedBefore {
  readonly version: 1;
  /** `2026-10-31`. */
  readonly on: string;
  /** Where the pages are to be found, as the owner last said; null where never. */
  readonly address: string | null;
  /** By the house's short name of the customer. */
  readonly customers: Readonly<Record<string, CustomerBefore>>;
  readonly inQuestion: readonly BatchInQuestion[];
  readonly changes: readonly ShareChange[];
}
