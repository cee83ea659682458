import type { ThermostatLoad } from "../../malting/thermostat/thermostatLoad.ts";
import type { HoldName, OffsetPoint } from "../thermostatResult.ts";

/** What one hold says of one load; the two holds are judged apart, so each is read by its own fields. */
interface HoldFields {
  readonly offsetKelvin: number | null;
  readonly standardErrorKelvin: number | null;
  readonly duty: number | null;
  readonly swingKelvin: number | null;
  readonly riseKelvinPerMinute: number | null;
  readonly setCelsius: number | null;
  readonly powerLimited: boolean;
  readonly hasHold: boolean;
}

function fieldsOf(load: ThermostatLoad, hold: HoldName): HoldFields {
  return hold === "drying"
    ? {
        offsetKelvin: load.dryingOffsetKelvin,
        standardErrorKelvin: load.dryingStandardErrorKelvin,
        duty: load.dryingDuty,
        swingKelvin: load.dryingSwingKelvin,
        // A fan that stands still in the warm-up doubles the rise: only rises with the fan running compare.
        riseKelvinPerMinute: (load.fanShareOfWarmUp ?? 1) > 0.99 ? load.warmUpRiseKelvinPerMinute : null,
        setCelsius: load.dryingSetCelsius,
        powerLimited: load.dryingPowerLimited,
        hasHold: load.dryingFrom !== null,
      }
    : {
        offsetKelvin: load.cureOffsetKelvin,
        standardErrorKelvin: load.cureStandardErrorKelvin,
        duty: load.cureDuty,
        swingKelvin: load.cureSwingKelvin,
        riseKelvinPerMinute: load.rampRiseKelvinPerMinute,
        setCelsius: load.cureSetCelsius,
        powerLimited: load.curePowerLimited,
        hasHold: load.cureFrom !== null,
      };
}

/** Air that stands still for part of the hold reads otherwise than air that is blown: such loads compare with their like only. */
const FAN_RUNS_THROUGHOUT = 0.9;

function whyWithout({ hasHold, powerLimited, setCelsius }: HoldFields): string {
  if (setCelsius === null) return "no set point logged";
  if (powerLimited) return "the heater could not hold the set point";
  return hasHold ? "no whole cycles in the readings" : "no hold found in the readings";
}

/** Loads with an offset in this hold, in time order, and the others counted by reason. */
export function offsetPoints(
  loads: readonly ThermostatLoad[],
  hold: HoldName,
  stretchOf: (at: number) => number,
  runsOf: (load: string) => readonly string[],
): {
  readonly points: readonly OffsetPoint[];
  readonly without: readonly { readonly reason: string; readonly count: number }[];
} {
  const points: OffsetPoint[] = [];
  const reasons = new Map<string, number>();
  for (const load of loads) {
    const fields = fieldsOf(load, hold);
    const { offsetKelvin, setCelsius, powerLimited } = fields;
    if (offsetKelvin !== null && (load.fanShareOfHold ?? 1) < FAN_RUNS_THROUGHOUT) {
      const reason = "the fan stood still for part of the hold";
      reasons.set(reason, (reasons.get(reason) ?? 0) + 1);
      continue;
    }
    if (offsetKelvin === null || setCelsius === null || powerLimited) {
      const reason = whyWithout(fields);
      reasons.set(reason, (reasons.get(reason) ?? 0) + 1);
      continue;
    }
    points.push({
      load: load.load,
      runs: runsOf(load.load),
      at: load.loadedAt,
      offsetKelvin,
      standardErrorKelvin: fields.standardErrorKelvin,
      duty: fields.duty,
      swingKelvin: fields.swingKelvin,
      riseKelvinPerMinute: fields.riseKelvinPerMinute,
      setCelsius,
      stretch: stretchOf(load.loadedAt),
    });
  }
  return { points, without: [...reasons].map(([reason, count]) => ({ reason, count })) };
}
