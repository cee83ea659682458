import { dryingPower } from "../../malting/dryingPower.ts";
import { waterToRemove } from "../../malting/waterToRemove.ts";
import type { AirBasis } from "../airBasis.ts";
import type { Filling, HoursAnalysis, UnfittedLoad } from "../kilnHoursResult.ts";
import type { IntakeAir, LoadRow } from "../loadRow.ts";

/** A load that can stand in a fit: everything that the plain regression needs, and the drying-air predictor where known. */
export interface ModelRow {
  readonly load: LoadRow;
  readonly hours: number;
  readonly air: IntakeAir;
  readonly bedDepthMetres: number;
  /** Tonnes of dry air that the water needs, over the share of the hold in which the fan ran; null where set point, air temperature or load are not known. */
  readonly dryAirNeededTonnes: number | null;
  /** The house's usual gain stood in for a green load or moisture that was not logged. */
  readonly usedUsualGain: boolean;
}

const KILOGRAMS_PER_TONNE = 1000;
const LEAST_FAN_SHARE = 0.1;

export const airOn = (load: LoadRow, basis: AirBasis): IntakeAir | null =>
  basis === "at_loading" ? load.airAtLoading : load.airOverLoad;

const hoursOf = (load: LoadRow, outcome: HoursAnalysis["outcome"]): number | null =>
  outcome === "kiln-hours" ? load.kilnHours : load.dryingHours;

/**
 * Tonnes of dry air that a load's water needs at the given intake air: water to remove over the air's drying power. Only what is
 * known at loading goes in, and of a fan on a thermostat of its own how long it ran: air that the fan moves in a share of
 * the time takes as much longer, so that hours go by the air needed over that share.
 *
 * @returns null where something is not known, the air is warmer than the set point and so cannot be heated to it, or the fan
 * hardly ran, which is more likely a switch logged the wrong way round
 */
export function dryAirNeeded(
  load: Pick<LoadRow, "greenLoadKilograms" | "greenMoisturePercent" | "grainInKilograms" | "fanShareOfHold">,
  air: { readonly relativeHumidityPercent: number; readonly celsius: number | null },
  dryingSetCelsius: number | null,
  filling: Filling,
): { readonly tonnes: number; readonly usedUsualGain: boolean } | null {
  const setPoint = dryingSetCelsius ?? filling.dryingSetCelsius;
  if (air.celsius === null || setPoint === null || setPoint <= air.celsius) return null;
  const share = load.fanShareOfHold ?? 1;
  if (share < LEAST_FAN_SHARE) return null;
  const moisture = load.greenMoisturePercent;
  const dryAlready = moisture !== null && moisture < filling.targetMoisturePercent;
  if (dryAlready) return null;
  const water = waterToRemove(load, filling.usualGain, filling.targetMoisturePercent);
  if (water === null) return null;
  const power = dryingPower({
    celsius: air.celsius,
    relativeHumidityPercent: air.relativeHumidityPercent,
    heatedToCelsius: setPoint,
    pressurePascals: filling.pressurePascals,
  });
  return {
    tonnes: water.kilograms / power / share / KILOGRAMS_PER_TONNE,
    usedUsualGain: water.basis !== "green load and green moisture",
  };
}

function whyUnfitted(
  load: LoadRow,
  hours: number | null,
  basis: AirBasis,
  without: ReadonlySet<string>,
): string | null {
  if (load.unloadedAt === null) return "still in the kiln";
  if (load.runs.some((run) => without.has(run))) return "left out by hand";
  if (hours === null) return "no hours logged";
  if (load.powerLimited) return "power-limited";
  if (airOn(load, basis) === null) return basis === "at_loading" ? "no air at loading" : "no air over the load";
  if (load.bedDepthMetres === null) return "no bed depth";
  return null;
}

/** Parts the loads into those that can stand in a fit and those that cannot, each of these with its reason. */
export function modelRows(
  loads: readonly LoadRow[],
  outcome: HoursAnalysis["outcome"],
  basis: AirBasis,
  filling: Filling,
  without: ReadonlySet<string>,
): { readonly rows: readonly ModelRow[]; readonly unfitted: readonly UnfittedLoad[] } {
  const rows: ModelRow[] = [];
  const unfitted: UnfittedLoad[] = [];
  for (const load of loads) {
    const hours = hoursOf(load, outcome);
    const air = airOn(load, basis);
    const reason = whyUnfitted(load, hours, basis, without);
    if (reason !== null || hours === null || air === null || load.bedDepthMetres === null) {
      const { runs, kiln, loadedAt } = load;
      unfitted.push({ load: load.load, runs, kiln, loadedAt, hours, reason: reason ?? "not logged in full" });
      continue;
    }
    const needed = dryAirNeeded(load, air, load.dryingSetCelsius, filling);
    rows.push({
      load,
      hours,
      air,
      bedDepthMetres: load.bedDepthMetres,
      dryAirNeededTonnes: needed?.tonnes ?? null,
      usedUsualGain: needed?.usedUsualGain ?? false,
    });
  }
  return { rows, unfitted };
}
