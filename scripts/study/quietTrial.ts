import type { Fact } from "../../src/report/fact.ts";
import { localDate } from "../demo/clock.ts";
import type { SoundHouse } from "./soundHouse.ts";
import { FIRST_PLANT } from "./studyHouse.ts";

/** One month of a house in which nothing was planted. */
export interface QuietMonth {
  readonly seed: number;
  readonly month: string;
  readonly batches: number;
  readonly falseFindings: readonly string[];
  /** True of every house in this climate with this timetable and this heater, whatever is planted. */
  readonly trueFindings: readonly string[];
}

/** The months of one quiet house from the first in which anything would be planted on; the last but in part logged is left out. */
export function quietTrial({ seed, house, months }: SoundHouse): readonly QuietMonth[] {
  const powerless = new Set(
    house.loads
      .filter(({ faults }) => faults.includes("power-limited"))
      .map(({ logged }) => localDate(logged.loadedAt)),
  );
  return months
    .filter(({ totals }) => totals.month >= FIRST_PLANT.slice(0, 7))
    .map(({ totals, findings }) => {
      const isTrue = (facts: readonly Fact[]): boolean =>
        facts.every((fact) => fact.kind === "timetable" || (fact.kind === "power limit" && hasOne(powerless, fact)));
      return {
        seed,
        month: totals.month,
        batches: totals.batches,
        falseFindings: findings.filter(({ facts }) => !isTrue(facts)).map(({ id }) => id),
        trueFindings: findings.filter(({ facts }) => isTrue(facts)).map(({ id }) => id),
      };
    });
}

const hasOne = (dates: ReadonlySet<string>, { from, to }: Fact): boolean =>
  [...dates].some((date) => date >= localDate(from) && date <= localDate(to));
