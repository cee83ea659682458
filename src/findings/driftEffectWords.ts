import type { DriftEffect } from "../report/thermostatResult.ts";
import { print, printRange } from "../units/print.ts";
import type { Quantity } from "../units/quantity.ts";
import type { UnitSystem } from "../units/unitSystem.ts";
import { counted } from "./counted.ts";

const SHOWN: Readonly<Record<DriftEffect["measure"], { readonly quantity: Quantity; readonly decimals: number }>> = {
  "kiln hours": { quantity: "hours", decimals: 1 },
  "final moisture": { quantity: "percentagePoints", decimals: 2 },
  energy: { quantity: "energyPerMass", decimals: 3 },
};

export const effectTitle: Readonly<Record<DriftEffect["measure"], string>> = {
  "kiln hours": "Kiln hours",
  "final moisture": "Final moisture",
  energy: "Energy for the water removed",
};

const AGAINST: Readonly<Record<DriftEffect["measure"], string>> = {
  "kiln hours": "beyond what air and bed account for",
  "final moisture": "off the centre of the batch’s variety",
  energy: "at equal outside air",
};

/** `−0.4 h (−1.0 to +0.2 h)`, or that it cannot be told. */
export function effectSize({ measure, effect }: DriftEffect, units: UnitSystem): string {
  if (effect === null) return "cannot be told";
  const { quantity, decimals } = SHOWN[measure];
  const options = { signed: true, decimals } as const;
  const range = printRange(effect.low, effect.high, quantity, units, options);
  return `${print(effect.estimate, quantity, units, options)} (${range})`;
}

/** What the number is counted against, and whether it is more than chance gives. */
export function effectBasis({ measure, effect, loads }: DriftEffect): string {
  if (effect === null)
    return `Too few of these runs say it: ${counted(loads, "load")} since the change, and those before it.`;
  const verdict = effect.low > 0 || effect.high < 0 ? "More than chance gives." : "No more than chance gives.";
  return `${counted(loads, "load")} since the change against those before it, ${AGAINST[measure]}. ${verdict}`;
}
