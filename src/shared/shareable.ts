import type { CustomerRow, DeliveryRow, SharingSources } from "../report/sharing/sharingSources.ts";
import { amongFormer } from "./formerBatches.ts";
import {
  passCertificate,
  passCurve,
  passDelivery,
  passLimits,
  passLoad,
  passRun,
  SHARED_MEASURES,
} from "./projection.ts";
import type { Seal } from "./seal.ts";
import type { SharedBatch, SharedCustomer, SharedDelivery } from "./sharedSite.ts";

/** What stands outside the logs: keys, folder names, and what the owner holds back. */
export interface SharingChoices {
  readonly keyOf: (customer: CustomerRow) => string;
  readonly sealOf: (customer: CustomerRow) => Seal | null;
  /** The folder of a batch's page: the same text for the same key and run, and no way back from it. */
  readonly refOf: (key: string, run: string) => string;
  /** Runs that get no page. */
  readonly heldBack: ReadonlySet<string>;
}

const newestFirst = (a: DeliveryRow, b: DeliveryRow): number =>
  b.shippedOn - a.shippedOn ||
  (a.delivery < b.delivery ? 1 : a.delivery > b.delivery ? -1 : 0) ||
  (a.run < b.run ? 1 : -1);

/** Everything about one batch but its place among others. */
function batchOf(
  sources: SharingSources,
  run: string,
  ref: string,
  delivered: readonly DeliveryRow[],
): Omit<SharedBatch, "former"> | null {
  const row = sources.runs.find((candidate) => candidate.run === run);
  if (row === undefined) return null;
  const load = sources.loads.find((candidate) => candidate.load === row.load) ?? null;
  const curve = load === null ? undefined : sources.curves.get(load.load);
  const certificates = sources.certificates.filter((certificate) => certificate.run === run);
  return {
    ref,
    run: passRun(row, sources.house),
    load: load === null ? null : passLoad(load),
    curve: curve === undefined ? null : passCurve(curve),
    deliveries: delivered.filter((delivery) => delivery.run === run).map(passDelivery),
    certificates: certificates.map(passCertificate).toSorted((a, b) => b.testedOn - a.testedOn),
    spec: Object.fromEntries(
      SHARED_MEASURES.flatMap((measure) => {
        const limits = passLimits(sources.targets, measure, row);
        return limits === null ? [] : [[measure, limits]];
      }),
    ),
  };
}

function customerOf(sources: SharingSources, customer: CustomerRow, choices: SharingChoices): SharedCustomer {
  const key = choices.keyOf(customer);
  const delivered = sources.deliveries.filter((row) => row.customer === customer.customer).toSorted(newestFirst);
  const malt = delivered.filter(({ product }) => product === "malt");
  // By first delivery, oldest first: each batch is compared with those before it.
  const runs = [...new Set(malt.toReversed().map(({ run }) => run))];
  const found = runs.flatMap((run) => {
    const batch = choices.heldBack.has(run) ? null : batchOf(sources, run, choices.refOf(key, run), malt);
    return batch === null ? [] : [{ ...batch, of: run }];
  });
  const batches = found.map(({ of: _, ...batch }, at) => ({
    ...batch,
    former: amongFormer(batch, found.slice(0, at)),
  }));
  const withPage = new Set(found.map(({ of }) => of));
  const deliveries = delivered.map((row): SharedDelivery => {
    const made = sources.runs.find(({ run }) => run === row.run);
    const passed = made === undefined ? null : passRun(made, sources.house);
    const heldBack = row.product === "malt" && choices.heldBack.has(row.run);
    return {
      ...passDelivery(row),
      bagCode: passed?.bagCode ?? null,
      variety: passed?.variety ?? passed?.grain ?? null,
      ref: choices.refOf(key, row.run),
      leads: heldBack ? "held-back" : row.product === "malt" && withPage.has(row.run) ? "page" : "no-page",
    };
  });
  return { key, seal: choices.sealOf(customer), deliveries, batches };
}

/** The pages of every customer who shares, made of nothing but what the projection lets through. */
export function shareable(sources: SharingSources, choices: SharingChoices): readonly SharedCustomer[] {
  return sources.customers.filter(({ share }) => share).map((customer) => customerOf(sources, customer, choices));
}
