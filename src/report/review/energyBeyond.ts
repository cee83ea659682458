import { studentTQuantile } from "../../analysis/distributions.ts";
import { findFitFault } from "../../analysis/findFitFault.ts";
import { fitLeastSquares } from "../../analysis/fitLeastSquares.ts";
import { predict } from "../../analysis/predict.ts";
import type { Interval } from "../../analysis/regressionFit.ts";
import { LATEST_RUNS } from "../../findings/facts/factFrame.ts";
import { latestLoads } from "../../findings/facts/latestLoads.ts";
import type { LoadRow } from "../loadRow.ts";

/** The line is drawn through as many loads as a season brings. */
const FEWEST_TO_COMPARE = 20;

interface EnergyOfLoad {
  readonly perKilogram: number;
  /** Outside temperature, its square, bed depth. */
  readonly terms: readonly [number, number, number];
}

/**
 * The colder the air the more heat, in deep cold more yet, since the bed waits for what the heater cannot give; and the shallower the bed
 * the more is lost beside the little water there is.
 */
const TERMS = ["outside temperature", "its square", "bed depth"] as const;

function energyOf(load: LoadRow): EnergyOfLoad | null {
  const { energyKilowattHours, waterRemovedKilograms, airOverLoad, airAtLoading, bedDepthMetres } = load;
  const celsius = airOverLoad?.celsius ?? airAtLoading?.celsius ?? null;
  if (energyKilowattHours === null || !waterRemovedKilograms || celsius === null || bedDepthMetres === null)
    return null;
  return { perKilogram: energyKilowattHours / waterRemovedKilograms, terms: [celsius, celsius ** 2, bedDepthMetres] };
}

const meanOf = (values: readonly number[]): number => values.reduce((sum, value) => sum + value, 0) / values.length;

/**
 * How much more energy the latest loads took for a kilogram of water, kWh, than outside air and bed depth account for by the loads
 * before them, with a 95 % interval that counts the fit's own error: it is large beyond the weather that it has seen. Null
 * where too few loads have all of it.
 */
export function energyBeyond(
  loads: readonly LoadRow[],
  month: { readonly from: number; readonly before: number },
): Interval | null {
  const { done, latest } = latestLoads(loads, month);
  const earlier = done.slice(0, done.length - latest.length).flatMap((load) => energyOf(load) ?? []);
  const now = latest.flatMap((load) => energyOf(load) ?? []);
  if (now.length < LATEST_RUNS || earlier.length < FEWEST_TO_COMPARE) return null;
  const columns = TERMS.map((name, term) => ({
    name,
    label: name,
    values: earlier.map(({ terms }) => terms[term] as number),
  }));
  const response = earlier.map(({ perKilogram }) => perKilogram);
  if (findFitFault(columns, response) !== null) return null;
  const fit = fitLeastSquares(columns, response);
  const expected = predict(
    fit,
    TERMS.map((_, term) => meanOf(now.map(({ terms }) => terms[term] as number))),
  );
  const estimate = meanOf(now.map(({ perKilogram }) => perKilogram)) - expected.estimate;
  const scatter = fit.residualStandardDeviation / Math.sqrt(now.length);
  const reach = studentTQuantile(0.975, fit.degreesOfFreedom) * Math.hypot(scatter, expected.meanStandardError);
  return { estimate, low: estimate - reach, high: estimate + reach };
}
