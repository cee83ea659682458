import { parseLoadReadings } from "../report/loadCurve.ts";
import type { KilnCurve } from "../report/runPageResult.ts";

const kept = new Map<string, Promise<KilnCurve>>();

/** The readings of one load, fetched once. What could not be fetched may be tried again. */
export function fetchCurve(address: string): Promise<KilnCurve> {
  const known = kept.get(address);
  if (known) return known;
  const fetched = fetch(address).then(async (response) => {
    if (!response.ok) throw new Error(`the readings could not be fetched (${response.status})`);
    return parseLoadReadings(await response.text());
  });
  fetched.catch(() => kept.delete(address));
  kept.set(address, fetched);
  return fetched;
}
