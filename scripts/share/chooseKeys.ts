import type { CustomerRow } from "../../src/report/sharing/sharingSources.ts";
import { isKey, newKey } from "./keys.ts";

export interface ChosenKeys {
  /** By the customer's short name. */
  readonly keys: ReadonlyMap<string, string>;
  /** Those that customers.csv does not hold yet, by line. */
  readonly toWrite: ReadonlyMap<number, string>;
}

/**
 * The key of every customer who shares: the one in customers.csv, or a new one where there is none or the owner asks for it.
 *
 * @throws {RangeError} for a key that the command did not make, one that two customers share, or a new key for nobody
 */
export function chooseKeys(customers: readonly CustomerRow[], renew: ReadonlySet<string>): ChosenKeys {
  const sharing = customers.filter(({ share }) => share);
  for (const name of renew) {
    if (!sharing.some(({ customer }) => customer === name)) {
      throw new RangeError(`--new-key ${name}: customers.csv has no such customer with share = yes`);
    }
  }
  const keys = new Map<string, string>();
  const toWrite = new Map<number, string>();
  const taken = new Map<string, string>();
  for (const { customer, linkKey, line } of sharing) {
    if (keys.has(customer)) throw new RangeError(`customers.csv, line ${line}: ${customer} stands there twice`);
    const fresh = linkKey === null || renew.has(customer);
    if (!fresh && !isKey(linkKey)) {
      throw new RangeError(
        `customers.csv, line ${line}: the link_key of ${customer} is not one that this command made, and may be guessed. Blank it, or add --new-key ${customer}`,
      );
    }
    const key = fresh ? newKey() : linkKey;
    // A disk or a host may not tell upper from lower case.
    const other = taken.get(key.toLowerCase());
    if (other !== undefined) {
      throw new RangeError(
        `customers.csv: ${other} and ${customer} have the same link_key, so each would see the other's pages. Add --new-key ${customer}`,
      );
    }
    taken.set(key.toLowerCase(), customer);
    keys.set(customer, key);
    if (fresh) toWrite.set(line, key);
  }
  return { keys, toWrite };
}
