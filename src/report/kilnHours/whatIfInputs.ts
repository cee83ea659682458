import { printNumber } from "../../units/print.ts";
import { fromShown, type Quantity, shownAs, toShown } from "../../units/quantity.ts";
import type { UnitSystem } from "../../units/unitSystem.ts";
import type { WhatIfInputs } from "../kilnHoursResult.ts";
import type { WhatIfText } from "../view.ts";

type Field = keyof WhatIfText;

const NUMBER_FIELDS: readonly {
  readonly field: Field;
  readonly input: "relativeHumidityPercent" | "celsius" | "bedDepthMetres" | "greenLoadKilograms" | "dryingSetCelsius";
  readonly quantity: Quantity;
  readonly says: string;
  /** In the unit kept inside: what any kiln could see. */
  readonly range: readonly [number, number];
}[] = [
  { field: "humidity", input: "relativeHumidityPercent", quantity: "percent", says: "humidity", range: [0, 100] },
  { field: "temperature", input: "celsius", quantity: "temperature", says: "outside air", range: [-40, 50] },
  { field: "depth", input: "bedDepthMetres", quantity: "bedDepth", says: "bed depth", range: [0.01, 2] },
  { field: "load", input: "greenLoadKilograms", quantity: "mass", says: "green load", range: [1, 100_000] },
  { field: "setPoint", input: "dryingSetCelsius", quantity: "temperature", says: "set point", range: [20, 110] },
];

const PLAIN_NUMBER = /^[-\u2212]?\d+(?:[.,]\d+)?$/;
const CLOCK = /^([01]?\d|2[0-3])[:.]([0-5]\d)$/;

/** Minutes after midnight of `18:00`, or null where the text is no clock time. */
export function readClock(text: string): number | null {
  const found = CLOCK.exec(text.trim());
  return found ? Number(found[1]) * 60 + Number(found[2]) : null;
}

/** A number as a reader types it, with a point or a comma; null where the text is none. */
export function readNumber(text: string): number | null {
  const trimmed = text.trim();
  return PLAIN_NUMBER.test(trimmed) ? Number(trimmed.replace("\u2212", "-").replace(",", ".")) : null;
}

export type WhatIfReading =
  | { readonly kind: "inputs"; readonly inputs: WhatIfInputs }
  | { readonly kind: "fault"; readonly field: Field; readonly sentence: string };

/**
 * What the reader typed, in SI. A field left alone keeps the house's usual value; a green load left alone follows the bed
 * depth, since a deeper bed holds more.
 */
export function readWhatIf(text: Readonly<Partial<WhatIfText>>, usual: WhatIfInputs, units: UnitSystem): WhatIfReading {
  const inputs: Record<string, number | null> = { ...usual };
  for (const { field, input, quantity, says, range } of NUMBER_FIELDS) {
    const typed = text[field];
    if (typed === undefined || typed.trim() === "") continue;
    const shown = readNumber(typed);
    const inside = shown === null ? null : fromShown(shown, quantity, units);
    if (inside === null || inside < range[0] || inside > range[1]) {
      const [low, high] = [
        Math.ceil(toShown(range[0], quantity, units)),
        Math.floor(toShown(range[1], quantity, units)),
      ];
      const { unit } = shownAs(quantity, units);
      return {
        kind: "fault",
        field,
        sentence: `The ${says} must be a number between ${printNumber(low, 0)} and ${printNumber(high, 0)}\u00a0${unit}.`,
      };
    }
    inputs[input] = inside;
  }
  for (const [field, input] of [
    ["start", "startedAtMinutes"],
    ["finish", "wantedFinishMinutes"],
  ] as const) {
    const typed = text[field];
    if (typed === undefined || typed.trim() === "") continue;
    const minutes = readClock(typed);
    if (minutes === null) return { kind: "fault", field, sentence: "Write the time as 18:00." };
    inputs[input] = minutes;
  }
  return { kind: "inputs", inputs: inputs as unknown as WhatIfInputs };
}

/**
 * The typed fields said again in other units, so that a switch of units changes the words and not the question. Text that
 * is no number stays as it is.
 */
export function convertWhatIf(
  text: Readonly<Partial<WhatIfText>>,
  from: UnitSystem,
  to: UnitSystem,
): Readonly<Partial<WhatIfText>> {
  const said: Partial<Record<Field, string>> = { ...text };
  for (const { field, quantity } of NUMBER_FIELDS) {
    const shown = readNumber(text[field] ?? "");
    if (shown === null || shownAs(quantity, from).unit === shownAs(quantity, to).unit) continue;
    const again = toShown(fromShown(shown, quantity, from), quantity, to);
    said[field] = String(Number(again.toFixed(shownAs(quantity, to).decimals)));
  }
  return said;
}
