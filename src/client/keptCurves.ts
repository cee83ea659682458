import { parseLoadReadings } from "../report/loadCurve.ts";
import type { KilnCurve } from "../report/runPageResult.ts";

/** The readings of loads, each had once. What could not be had may be tried again. @param read the text of a load's own file */
export function keptCurves(read: (file: string) => Promise<string>): (file: string) => Promise<KilnCurve> {
  const kept = new Map<string, Promise<KilnCurve>>();
  return (file) => {
    const known = kept.get(file) ?? read(file).then(parseLoadReadings);
    kept.set(file, known);
    known.catch(() => kept.delete(file));
    return known;
  };
}
