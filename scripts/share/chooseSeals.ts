import type { SharedBefore } from "../../src/report/sharing/sharedBefore.ts";
import type { CustomerRow } from "../../src/report/sharing/sharingSources.ts";
import { newPassphrase } from "./passphrase.ts";

export interface SealOptions {
  /** Seal every customer's pages. */
  readonly all: boolean;
  readonly seal: ReadonlySet<string>;
  /** Leave these open. */
  readonly open: ReadonlySet<string>;
  /** As the owner keeps them. */
  readonly known: ReadonlyMap<string, string>;
  readonly before: SharedBefore | null;
}

export interface ChosenSeals {
  /** By the customer's short name; absent where pages are open. */
  readonly passphrases: ReadonlyMap<string, string>;
  /** Customers whose passphrase was made now. */
  readonly made: ReadonlySet<string>;
}

/**
 * Whose pages are sealed, and with what.
 *
 * @throws {RangeError} where pages that were sealed last time would stand open without the owner saying so, or for a
 *   customer who has no pages
 */
export function chooseSeals(customers: readonly CustomerRow[], options: SealOptions): ChosenSeals {
  const sharing = customers.filter(({ share }) => share).map(({ customer }) => customer);
  for (const name of [...options.seal, ...options.open]) {
    if (!sharing.includes(name)) throw new RangeError(`${name}: customers.csv has no such customer with share = yes`);
    if (options.seal.has(name) && options.open.has(name))
      throw new RangeError(`${name} cannot be both sealed and open`);
  }
  const passphrases = new Map<string, string>();
  const made = new Set<string>();
  for (const customer of sharing) {
    const sealed = options.seal.has(customer) || (options.all && !options.open.has(customer));
    if (!sealed) {
      if (options.before?.customers[customer]?.sealed && !options.open.has(customer)) {
        throw new RangeError(
          `the pages of ${customer} were sealed last time: add --seal-for ${customer}, or --open-for ${customer} to leave them open`,
        );
      }
      continue;
    }
    const kept = options.known.get(customer);
    if (kept === undefined) made.add(customer);
    passphrases.set(customer, kept ?? newPassphrase());
  }
  return { passphrases, made };
}
