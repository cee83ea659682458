import type { FormerMeasure } from "./formerBatches.ts";
import type {
  PassedCertificate,
  PassedCurve,
  PassedDelivery,
  PassedHouse,
  PassedLimits,
  PassedLoad,
  PassedRun,
} from "./projection.ts";
import type { Seal } from "./seal.ts";

/** What the customers' pages know of the house. */
export interface SharedHouse extends PassedHouse {
  /** Where the pages will be found, with a closing slash; null where nobody has said. */
  readonly address: string | null;
  readonly invented: boolean;
}

/** What a row of the customer's history leads to: its batch's page; nothing, as the house holds it back; or there is none. */
export type Leads = "page" | "held-back" | "no-page";

export interface SharedDelivery extends PassedDelivery {
  readonly bagCode: string | null;
  readonly variety: string | null;
  /** Folder of the batch's page inside the customer's. */
  readonly ref: string;
  readonly leads: Leads;
}

/** One batch as its buyer may see it. */
export interface SharedBatch {
  /** Folder of its page inside the customer's: a text that says nothing. */
  readonly ref: string;
  readonly run: PassedRun;
  /** The load that it was dried in, the first where there were several. */
  readonly load: PassedLoad | null;
  readonly curve: PassedCurve | null;
  /** Of this batch to this customer, newest first. */
  readonly deliveries: readonly PassedDelivery[];
  /** Newest first. */
  readonly certificates: readonly PassedCertificate[];
  /** By measure; a measure without limits is absent. */
  readonly spec: Readonly<Record<string, PassedLimits>>;
  /** Among the customer's former batches of the same variety. */
  readonly former: readonly FormerMeasure[];
}

/** One customer's pages. The customer is nameless: the folder is a random key. */
export interface SharedCustomer {
  readonly key: string;
  /** What its pages are sealed with; null for pages that anyone with the link can read. */
  readonly seal: Seal | null;
  /** Newest first. */
  readonly deliveries: readonly SharedDelivery[];
  readonly batches: readonly SharedBatch[];
}

/** Everything that the customers' build is made from. */
export interface SharedSite {
  readonly house: SharedHouse;
  readonly customers: readonly SharedCustomer[];
}
