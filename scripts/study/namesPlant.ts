import type { Fact } from "../../src/report/fact.ts";
import { LAGGING_BED, type Plant } from "../demo/plant.ts";

/** What is true of the house that a plant stands in, where naming it needs that. */
export interface PlantedTruth {
  /** The uneven lot. */
  readonly lot: string | null;
  readonly lotRuns: ReadonlySet<string>;
  /** The column that is no longer kept. */
  readonly field: string | null;
}

const sameWay = (a: number, b: number): boolean => Math.sign(a) === Math.sign(b);

/** Too little air or heat, as a kiln shows it. */
const slowKiln = (fact: Fact): boolean =>
  (fact.kind === "kiln hours" && fact.hoursOver.estimate > 0) ||
  (fact.kind === "thermostat" && fact.shape === "weak heater or fan");

const damperMalt = (fact: Fact): boolean =>
  fact.kind === "chart" && fact.measure === "final_moisture_pct" && fact.size > 0 && !fact.single;

/**
 * Does this fact name the trouble? It must say the thing itself or where it shows, and the right way: a finding that only
 * sends the maltster elsewhere is none.
 */
export function namesPlant({ kind, size }: Plant, { lot, lotRuns, field }: PlantedTruth, fact: Fact): boolean {
  switch (kind) {
    case "slipping belt":
    case "clogging filter":
      return slowKiln(fact) || damperMalt(fact);
    case "heater element lost":
      return slowKiln(fact) || fact.kind === "power limit" || fact.kind === "heater";
    case "thermostat creep":
    case "thermostat step":
      return (
        fact.kind === "thermostat" &&
        ((fact.shape === "unexplained" && fact.movedKelvin === 0) ||
          ((fact.shape === "creep" || fact.shape === "step" || fact.shape === "unexplained") &&
            sameWay(fact.movedKelvin, size)))
      );
    case "worn contacts":
      return fact.kind === "thermostat" && fact.shape === "worn contacts";
    case "logger step":
      return (
        (fact.kind === "logger" && fact.errorKelvin !== null && sameWay(fact.errorKelvin, size)) ||
        (fact.kind === "thermostat" && fact.loggerDoubt && sameWay(fact.movedKelvin, size))
      );
    case "mis-set scale":
      return (
        (fact.kind === "chart" && fact.measure === "dry_yield_pct" && !fact.single && sameWay(fact.size, size)) ||
        (fact.kind === "steep" && fact.shape !== "shift" && sameWay(fact.points.estimate, -size))
      );
    case "moisture meter":
      return fact.kind === "laboratory" && sameWay(fact.points.estimate, size);
    case "over-drying":
      return fact.kind === "chart" && fact.measure === "final_moisture_pct" && !fact.single && fact.size < 0;
    case "uneven lot":
      return (
        (fact.kind === "lot" && fact.lot === lot) ||
        (fact.kind === "uneven batch" && fact.runs.filter((run) => lotRuns.has(run)).length * 2 > fact.runs.length)
      );
    case "short steep":
      return fact.kind === "steep" && fact.shape === "shift" && fact.points.estimate < 0;
    case "failing cooler":
      return fact.kind === "timetable" && fact.lengthOver.estimate > 0;
    case "lagging bed":
      return fact.kind === "bed" && fact.bed === LAGGING_BED && fact.difference.estimate < 0;
    case "column not kept":
      return fact.kind === "logs" && field !== null && fact.missing.includes(field);
  }
}
