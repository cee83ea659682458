import { findFitFault } from "../../analysis/findFitFault.ts";
import { isFitFault } from "../../analysis/fitFault.ts";
import { fitLeastSquares } from "../../analysis/fitLeastSquares.ts";
import type { Interval } from "../../analysis/regressionFit.ts";
import type { ControlChart } from "../controlChartResult.ts";
import type { KilnHoursResult } from "../kilnHoursResult.ts";
import type { LoadRow } from "../loadRow.ts";
import type { DriftEffect } from "../thermostatResult.ts";

/** Where the drift began, and the loads it is compared with: those of the same stretch before it. */
export interface DriftSpan {
  readonly kiln: string;
  readonly stretchFrom: number;
  readonly onset: number;
}

interface Sample {
  readonly at: number;
  readonly value: number;
  readonly covariate: number | null;
}

/** Fewer loads on either side carry no difference. */
const FEWEST_A_SIDE = 4;

/** Mean of the values since the onset less the mean before it, allowing for a covariate where every sample has it. */
function difference(
  samples: readonly Sample[],
  { stretchFrom, onset }: DriftSpan,
): { effect: Interval | null; loads: number } {
  const own = samples.filter(({ at }) => at >= stretchFrom);
  const since: number[] = own.map(({ at }) => (at >= onset ? 1 : 0));
  const loads = since.filter((flag) => flag === 1).length;
  if (loads < FEWEST_A_SIDE || own.length - loads < FEWEST_A_SIDE) return { effect: null, loads };
  const values = own.map(({ value }) => value);
  const columns = [{ name: "since", values: since }];
  if (own.every(({ covariate }) => covariate !== null)) {
    columns.push({ name: "air", values: own.map(({ covariate }) => covariate ?? 0) });
  }
  const fault = findFitFault(columns, values);
  if (fault !== null && isFitFault(fault)) return { effect: null, loads };
  const term = fitLeastSquares(columns, values).terms.find(({ name }) => name === "since");
  return { effect: term === undefined ? null : { estimate: term.estimate, low: term.low, high: term.high }, loads };
}

/**
 * What a drift did to the malt, from the models already built: hours beyond what air and bed account for, moisture off its
 * variety's centre, and energy for a kilogram of water at equal outside air. A difference beside the drift, not proof of its cause.
 */
export function driftEffects(
  span: DriftSpan,
  kilnHours: KilnHoursResult,
  moisture: ControlChart | undefined,
  loads: readonly LoadRow[],
): readonly DriftEffect[] {
  const { best, dryingAir, humidityDepth } = kilnHours.kilnHours;
  const model = best === "drying-air" ? dryingAir : humidityDepth;
  const ofKiln = new Set(loads.filter(({ kiln }) => kiln === span.kiln).map(({ load }) => load));
  const hours = (model?.loads ?? [])
    .filter(({ load }) => ofKiln.has(load))
    .map(({ loadedAt, residualHours }) => ({ at: loadedAt, value: residualHours, covariate: null }));
  const wet = (moisture?.runs ?? []).flatMap(({ load, at, value, centre }) =>
    centre !== null && load !== null && ofKiln.has(load) ? [{ at, value: value - centre, covariate: null }] : [],
  );
  const energy = loads.flatMap((load) => {
    const { energyKilowattHours, waterRemovedKilograms, loadedAt, airOverLoad, airAtLoading } = load;
    if (load.kiln !== span.kiln || energyKilowattHours === null || !waterRemovedKilograms) return [];
    const air = airOverLoad?.celsius ?? airAtLoading?.celsius ?? null;
    return [{ at: loadedAt, value: energyKilowattHours / waterRemovedKilograms, covariate: air }];
  });
  const effectOn = (measure: DriftEffect["measure"], samples: readonly Sample[]): DriftEffect => {
    const { effect, loads: count } = difference(samples, span);
    return { measure, effect, loads: count };
  };
  return [effectOn("kiln hours", hours), effectOn("final moisture", wet), effectOn("energy", energy)];
}
