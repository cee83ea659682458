import type { BatchInQuestion, ShareChange } from "./sharedBefore.ts";

/** A customer as the owner's page lists it: by the short name alone, and never with its key. */
export interface SharingCustomer {
  readonly customer: string;
  readonly shares: boolean;
  /** Batches of which it was sent malt, and the latest such day (milliseconds at UTC midnight), by the logs as they are now. */
  readonly batchesSent: number;
  readonly lastSentOn: number | null;
  /** As the last share left it; null where it had no pages. */
  readonly shown: {
    /** `2026-10-31`: first share that had pages for it. */
    readonly since: string;
    readonly sealed: boolean;
    readonly runs: readonly string[];
  } | null;
}

/** What the owner's page says of the customers' pages. */
export interface SharedPagesResult {
  readonly customers: readonly SharingCustomer[];
  /** Null where nothing was ever shared. */
  readonly last: {
    /** `2026-10-31`. */
    readonly on: string;
    readonly changes: readonly ShareChange[];
    readonly inQuestion: readonly BatchInQuestion[];
  } | null;
  /** Why the record of the last share could not be read; null where it could. */
  readonly recordFault: string | null;
  /** What may pass, by table, columns as the logs name them without their units. */
  readonly passes: readonly { readonly table: string; readonly columns: readonly string[] }[];
}
