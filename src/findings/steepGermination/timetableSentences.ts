import type { AcrospireRun, GrowthModel, SteepGerminationResult } from "../../report/steepGerminationResult.ts";
import { print, printNumber, printRange } from "../../units/print.ts";
import type { UnitSystem } from "../../units/unitSystem.ts";
import { counted, countedInWords } from "../counted.ts";
import { verdictOn } from "../kilnEffects.ts";
import { joinSentences, type Sentence, strong } from "../sentence.ts";
import { degrees, degreeWord, length, perDegree, wholeHours, wholePercent } from "./measureWords.ts";

export type Timetable = NonNullable<GrowthModel["timetable"]>;
type Row = Timetable["rows"][number];

/** Which way the timetable is off at one bed temperature: its malt comes off `too soon` or `too late`, or it `suits`. */
export type TimetableVerdict = "too soon" | "too late" | "suits";

/** Said to be off only where the interval of the hours keeps clear of the timetable. */
export function timetableVerdict({ againstTimetableHours: { low, high } }: Row): TimetableVerdict {
  if (low > 0) return "too soon";
  return high < 0 ? "too late" : "suits";
}

/** The bed temperature at which the aim is reached just when the timetable ends; null where that lies outside the rows. */
export function suitedCelsius({ rows }: Timetable): number | null {
  for (let i = 1; i < rows.length; i += 1) {
    const [before, after] = [rows[i - 1], rows[i]];
    if (before === undefined || after === undefined) continue;
    const [a, b] = [before.againstTimetableHours.estimate, after.againstTimetableHours.estimate];
    if (a === 0) return before.celsius;
    if (a > 0 !== b > 0) return before.celsius + ((after.celsius - before.celsius) * a) / (a - b);
  }
  return null;
}

const off = ({ celsius, againstTimetableHours: { estimate } }: Row, units: UnitSystem): Sentence => [
  strong(`${wholeHours(Math.abs(estimate))} ${estimate > 0 ? "too soon" : "too late"}`),
  ` at ${degrees(celsius, units)}`,
];

/** Does a fixed timetable suit the beds that the weather makes? */
export function timetableSentence(timetable: Timetable, units: UnitSystem): Sentence {
  const { rows, usualHours } = timetable;
  const [coolest, warmest] = [rows[0], rows.at(-1)];
  if (coolest === undefined || warmest === undefined) return [];
  const span = printRange(coolest.celsius, warmest.celsius, "temperature", units, { decimals: 0 });
  const floor = `${wholeHours(usualHours)} on the floor`;
  const [first, second] = [...new Set([coolest, warmest])].filter((row) => timetableVerdict(row) !== "suits");
  if (first === undefined) return [`${floor} suit every bed that the counts cover, ${span}.`];
  const comesOff: Sentence = [
    "malt comes off ",
    ...off(first, units),
    ...(second === undefined ? [] : [" and ", ...off(second, units)]),
    ".",
  ];
  const suited = suitedCelsius(timetable);
  return suited === null
    ? [`${floor} suit none of the beds that the counts cover, ${span}: `, ...comesOff]
    : [`${floor} suit a bed at about `, strong(print(suited, "temperature", units)), "; ", ...comesOff];
}

const exactRate = (fraction: number): string => print(fraction, "fraction", "metric", { decimals: 3 });

/** How the growth line was made and how well it is known. */
export function growthSentence(growth: GrowthModel, units: UnitSystem): Sentence {
  const { baseCelsius: base, lengthPerHundredDegreeHours: rate, runs, runsCountedTwice, counts } = growth;
  // A degree-hour in °F is 1.8 times as many.
  const step = units === "us" ? 180 : 100;
  return joinSentences([
    [
      `From ${counted(counts, "count")} in ${counted(runs, "batch", "batches")}, ${printNumber(runsCountedTwice, 0)} of them counted twice or more on the way: nothing grows below about `,
      strong(print(base.estimate, "temperature", units)),
      ` (${printRange(base.low, base.high, "temperature", units)}), and each ${printNumber(step, 0)}\u00a0degree-hours above it add `,
      strong(`${exactRate(rate.estimate)} of the kernel`),
      ` (${exactRate(rate.low)} to ${exactRate(rate.high)}).`,
    ],
    ["A degree-hour is one degree of the bed above that base, for one hour."],
  ]);
}

/** What the line leaves over: batches grow at their own rates, and counts lie off it. */
export function growthLeftSentence({ runToRunPercent, residualLength, lag }: GrowthModel): Sentence {
  return [
    `Batches grow at rates of their own, ${wholePercent(runToRunPercent)} apart (standard deviation), and a count lies ${length(residualLength)} of the kernel off the line: the hours are those of the usual batch, so look at the kernels before unloading. Growth worth ${length(lag.estimate)} of the kernel (${length(lag.low)} to ${length(lag.high)}) goes by before any acrospire shows.`,
  ];
}

/** Off by less than this, h, a batch is as good as on time: a shift's difference in when somebody unloads. */
const A_SHIFT = 6;

/** Hours against the timetable at any bed temperature between the rows, on straight lines between them; null outside. */
function againstAt({ rows }: Timetable, celsius: number): number | null {
  for (let i = 1; i < rows.length; i += 1) {
    const [before, after] = [rows[i - 1], rows[i]];
    if (before === undefined || after === undefined || celsius < before.celsius || celsius > after.celsius) continue;
    const share = (celsius - before.celsius) / (after.celsius - before.celsius);
    const [a, b] = [before.againstTimetableHours.estimate, after.againstTimetableHours.estimate];
    return a + share * (b - a);
  }
  return null;
}

/** In how many batches the timetable was off by more than a shift, by the temperature of their beds. */
export function timetableBatchesSentence(timetable: Timetable, runs: readonly AcrospireRun[]): Sentence {
  const beds = runs.flatMap(({ bedMeanCelsius }) => bedMeanCelsius ?? []);
  const hours = beds.flatMap((celsius) => againstAt(timetable, celsius) ?? []);
  if (hours.length === 0) return [];
  const soon = hours.filter((one) => one > A_SHIFT).length;
  const late = hours.filter((one) => one < -A_SHIFT).length;
  const outside = beds.length - hours.length;
  return joinSentences([
    [
      `Of ${counted(hours.length, "batch", "batches")} in such beds `,
      strong(`${printNumber(soon, 0)} came off more than ${wholeHours(A_SHIFT)} too soon`),
      " and ",
      strong(`${printNumber(late, 0)} as much too late`),
      ".",
    ],
    outside === 0
      ? []
      : [
          `${countedInWords(outside, "batch", "batches")} lay in cooler or warmer beds, of which the counts say nothing.`,
        ],
  ]);
}

/** Final length against bed temperature: all that one count at unloading can say. */
export function lengthOnTemperatureSentence(
  { batches, perKelvin }: NonNullable<SteepGerminationResult["lengthOnTemperature"]>,
  units: UnitSystem,
): Sentence {
  const [low, high] = [perKelvin.low, perKelvin.high].map((value) => exactRate(perDegree(value, units)));
  const verdict = verdictOn(perKelvin);
  const range = `(${low} to ${high}; ${counted(batches, "batch", "batches")})`;
  if (verdict === "not seen") return [`These batches do not show that a warmer bed gives longer malt ${range}.`];
  return [
    `Each ${degreeWord(units)} warmer in the bed goes with `,
    strong(
      `${exactRate(Math.abs(perDegree(perKelvin.estimate, units)))} of the kernel ${verdict === "adds" ? "more" : "less"}`,
    ),
    ` at unloading ${range}.`,
  ];
}

/** The same in a few words: how a fixed timetable lets the bed's temperature through to the malt. */
export function lengthOnTemperatureClause(
  { perKelvin }: NonNullable<SteepGerminationResult["lengthOnTemperature"]>,
  units: UnitSystem,
): Sentence {
  const verdict = verdictOn(perKelvin);
  if (verdict === "not seen") return ["These batches do not show that a warmer bed gives longer malt."];
  return [
    `Each ${degreeWord(units)} warmer in the bed leaves the malt `,
    strong(
      `${length(Math.abs(perDegree(perKelvin.estimate, units)))} of the kernel ${verdict === "adds" ? "longer" : "shorter"}`,
    ),
    " at unloading.",
  ];
}

/** What a few counts on the way would tell that one at unloading cannot. */
export const midwayCountsSentence: Sentence = [
  "With one count a batch and a fixed timetable, hours and temperature cannot be told apart. Two counts of 100\u00a0kernels on the way (at about half and at three quarters of the time) in ten batches, cool and warm ones, logged in acrospire-counts.csv, would give the hours sooner or later for each bed temperature.",
];
