import type { WhatIfInputs } from "../../report/kilnHoursResult.ts";
import type { AnswerWhatIf } from "../../report/whatIfAnswer.ts";
import { fromShown, toShown } from "../../units/quantity.ts";
import type { UnitSystem } from "../../units/unitSystem.ts";

/** Hours by humidity and bed depth at this house's usual air and set point: to hang by the kiln. */
export interface Reckoner {
  readonly depthsMetres: readonly number[];
  readonly rows: readonly {
    readonly relativeHumidityPercent: number;
    /** One a depth; null outside what the logs cover. */
    readonly hours: readonly (number | null)[];
  }[];
  /** Half the width of the 90 % interval, the widest in the table. */
  readonly giveOrTakeHours: number;
}

const HUMIDITIES = [30, 40, 50, 60, 70, 80, 90, 100];
const STEPS = [-4, -3, -2, -1, 0, 1, 2, 3, 4];

/** Null where the logs cover none of it. A green load follows the depth, as it does on the kiln floor. */
export function reckoner(usual: WhatIfInputs, units: UnitSystem, answer: AnswerWhatIf): Reckoner | null {
  const step = units === "us" ? 0.5 : 1;
  const middle = Math.round(toShown(usual.bedDepthMetres, "bedDepth", units) / step) * step;
  const depths = STEPS.map((n) => middle + n * step)
    .filter((depth) => depth > 0)
    .map((depth) => fromShown(depth, "bedDepth", units));
  let widest = 0;
  const hoursAt = (relativeHumidityPercent: number, bedDepthMetres: number): number | null => {
    const found = answer({
      ...usual,
      relativeHumidityPercent,
      bedDepthMetres,
      greenLoadKilograms: null,
      wantedFinishMinutes: null,
    });
    if (found.kind === "refusal") return null;
    widest = Math.max(widest, (found.kilnHours.high - found.kilnHours.low) / 2);
    return found.kilnHours.estimate;
  };
  const all = HUMIDITIES.map((humidity) => ({
    relativeHumidityPercent: humidity,
    hours: depths.map((depth) => hoursAt(humidity, depth)),
  }));
  const rows = all.filter(({ hours }) => hours.some((value) => value !== null));
  const kept = depths.map((_, column) => rows.some(({ hours }) => hours[column] !== null));
  const inUse = <T>(values: readonly T[]): readonly T[] => values.filter((_, column) => kept[column]);
  if (rows.length === 0) return null;
  return {
    depthsMetres: inUse(depths),
    rows: rows.map((row) => ({ ...row, hours: inUse(row.hours) })),
    giveOrTakeHours: widest,
  };
}
