import type { PredictorColumn } from "../../analysis/factorisation.ts";
import { localParts } from "../../units/instant.ts";

const DAY = 86_400_000;
const YEAR = 365.25 * DAY;

/** One yearly wave takes two columns: fewer runs, or less than a year and a half of them, would take the step for a season. */
const FEWEST_FOR_SEASON = 40;
const SPAN_FOR_SEASON = 1.5 * YEAR;

/** A yearly wave as sine and cosine of the date; none where the moments could not tell it from a step. */
export function seasonColumns(moments: readonly number[]): readonly PredictorColumn[] {
  const [first, last] = [moments[0] ?? 0, moments.at(-1) ?? 0];
  if (moments.length < FEWEST_FOR_SEASON || last - first < SPAN_FOR_SEASON) return [];
  const wave = (of: (angle: number) => number): number[] => moments.map((at) => of((2 * Math.PI * at) / YEAR));
  return [
    { name: "seasonSine", label: "season", values: wave(Math.sin) },
    { name: "seasonCosine", label: "season", values: wave(Math.cos) },
  ];
}

/** How much of the year two sets of moments share, month by month: 1 where they are spread alike, 0 where no month is in both. */
export function sharedSeason(first: readonly number[], second: readonly number[], timeZone: string): number {
  const shares = (moments: readonly number[]): number[] => {
    const months = new Array<number>(12).fill(0);
    for (const at of moments) {
      const month = localParts(at, timeZone).month - 1;
      months[month] = (months[month] ?? 0) + 1 / moments.length;
    }
    return months;
  };
  const [a, b] = [shares(first), shares(second)];
  return a.reduce((sum, share, month) => sum + Math.min(share, b[month] ?? 0), 0);
}
