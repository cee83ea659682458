import type { KilnThermostat } from "../report/thermostatResult.ts";
import { print } from "../units/print.ts";
import { counted } from "./counted.ts";
import { type Sentence, strong } from "./sentence.ts";
import { besideSetPoint, type Reader } from "./thermostatWords.ts";

function middle(values: readonly number[]): number | null {
  const sorted = values.toSorted((a, b) => a - b);
  const half = Math.floor(sorted.length / 2);
  const [low, high] = [sorted[sorted.length % 2 === 0 ? half - 1 : half], sorted[half]];
  return low === undefined || high === undefined ? null : (low + high) / 2;
}

/** What the fan's own thermostat did: where it switched, and how much of the air went through the bed. Empty where none was read. */
export function fanSentence({ fan, probeAtBulb }: KilnThermostat, { units }: Reader): Sentence {
  if (fan.length === 0) return [];
  const offsets = fan.flatMap(({ offsetKelvin }) => (offsetKelvin === null ? [] : [offsetKelvin]));
  const offset = middle(offsets);
  const share = middle(fan.flatMap(({ shareOfHold }) => (shareOfHold === null ? [] : [shareOfHold])));
  const sets = [...new Set(fan.flatMap(({ setCelsius }) => (setCelsius === null ? [] : [setCelsius])))];
  const set =
    sets.length === 1 && sets[0] !== undefined
      ? `, set at ${print(sets[0], "temperature", units, { decimals: 0 })},`
      : "";
  const switched: Sentence =
    offset === null
      ? ["The fan has a thermostat of its own; it switched too seldom for its offset to be told."]
      : probeAtBulb
        ? [
            `The fan’s own thermostat${set} switched `,
            strong(besideSetPoint(offset, units)),
            ` (middle of ${counted(offsets.length, "load")}).`,
          ]
        : [
            `The fan’s own thermostat${set} was read in ${counted(offsets.length, "load")}; the probe is not at its bulb, so no error is given.`,
          ];
  return [
    ...switched,
    share === null
      ? ""
      : ` The fan ran for ${print(share * 100, "percent", units, { decimals: 0 })} of the hold, and so much of its air went through the bed; kiln hours count it so.`,
  ];
}
