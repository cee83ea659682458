import type { AcrospireRun, GrowthModel, SteepGerminationResult } from "../../report/steepGerminationResult.ts";
import { print, printNumber, printRange } from "../../units/print.ts";
import type { UnitSystem } from "../../units/unitSystem.ts";
import { counted } from "../counted.ts";
import { verdictOn } from "../kilnEffects.ts";
import { joinSentences, type Sentence, strong } from "../sentence.ts";
import { degrees, degreeWord, length, perDegree, wholeHours } from "./measureWords.ts";

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
  `at ${degrees(celsius, units)} `,
  strong(`${wholeHours(Math.abs(estimate))} ${estimate > 0 ? "too soon" : "too late"}`),
];

/** Does a fixed timetable suit the beds that the weather makes? */
export function timetableSentence(timetable: Timetable, units: UnitSystem): Sentence {
  const { rows, usualHours } = timetable;
  const [coolest, warmest] = [rows[0], rows.at(-1)];
  if (coolest === undefined || warmest === undefined) return [];
  const span = `${print(coolest.celsius, "temperature", units, { decimals: 0, bare: true })} to ${print(warmest.celsius, "temperature", units, { decimals: 0 })}`;
  const extremes = [...new Set([coolest, warmest])].filter((row) => timetableVerdict(row) !== "suits");
  const [first, second] = extremes;
  if (first === undefined) {
    return [`A floor of ${wholeHours(usualHours)} suits every bed that these counts cover, ${span}.`];
  }
  const rest: Sentence = second === undefined ? [] : [", ", ...off(second, units)];
  const suited = suitedCelsius(timetable);
  if (suited === null) {
    return [
      `A floor of ${wholeHours(usualHours)} suits none of the beds logged: malt comes off `,
      ...off(first, units),
      ...rest,
      ".",
    ];
  }
  return [
    `A floor of ${wholeHours(usualHours)} suits a bed at about `,
    strong(print(suited, "temperature", units, { decimals: 0 })),
    "; malt comes off ",
    ...off(first, units),
    ...rest,
    ".",
  ];
}

/** How the growth line was made and how well it is known. */
export function growthSentence(growth: GrowthModel, units: UnitSystem): Sentence {
  const { baseCelsius: base, lengthPerHundredDegreeHours: rate, runs, counts } = growth;
  const aim = growth.timetable?.aimLength;
  const step = units === "us" ? 180 : 100;
  return joinSentences([
    [
      `From ${counted(counts, "count")} in ${counted(runs, "batch", "batches")}: nothing grows below about `,
      strong(degrees(base.estimate, units)),
      ` (${print(base.low, "temperature", units, { bare: true, decimals: 1 })} to ${print(base.high, "temperature", units, { decimals: 1 })}), and above it `,
      strong(length(rate.estimate)),
      ` of the kernel grows in ${printNumber(step, 0)}\u00a0degree-hours (${length(rate.low)} to ${length(rate.high)}).`,
    ],
    aim === undefined ? [] : [`The aim is ${length(aim)}.`],
    [
      "Degree-hours: degrees of the bed above that base, times hours on the floor; 10 degrees above it for 10 hours are 100.",
    ],
  ]);
}

/** How many batches lay in beds for which the timetable is off; empty where none was logged in the range. */
export function timetableBatchesSentence(
  { rows }: Timetable,
  runs: readonly AcrospireRun[],
  [from, to]: readonly [number, number],
  units: UnitSystem,
): Sentence {
  const beds = runs.flatMap(({ bedMeanCelsius }) => bedMeanCelsius ?? []);
  const covered = beds.filter((celsius) => celsius >= from && celsius <= to);
  const nearest = (celsius: number): Row | undefined =>
    [...rows].sort((a, b) => Math.abs(a.celsius - celsius) - Math.abs(b.celsius - celsius))[0];
  const verdicts = covered.flatMap((celsius) => {
    const row = nearest(celsius);
    return row === undefined ? [] : [timetableVerdict(row)];
  });
  if (verdicts.length === 0) return [];
  const count = (verdict: TimetableVerdict): number => verdicts.filter((one) => one === verdict).length;
  const outside = beds.length - covered.length;
  return joinSentences([
    [
      `Of ${counted(verdicts.length, "bed")} logged within that range, `,
      strong(`${printNumber(count("too soon"), 0)} came off too soon`),
      " and ",
      strong(`${printNumber(count("too late"), 0)} too late`),
      " by their temperature.",
    ],
    outside === 0
      ? []
      : [
          `${counted(outside, "bed")} lay outside ${printRange(from, to, "temperature", units)}, where no count was made on the way: nothing is said of ${outside === 1 ? "it" : "them"}.`,
        ],
  ]);
}

/** Final length against bed temperature: all that one count at unloading can say. */
export function lengthOnTemperatureSentence(
  { batches, perKelvin }: NonNullable<SteepGerminationResult["lengthOnTemperature"]>,
  units: UnitSystem,
): Sentence {
  const [estimate, low, high] = [perKelvin.estimate, perKelvin.low, perKelvin.high].map((value) =>
    perDegree(value, units),
  ) as [number, number, number];
  const verdict = verdictOn(perKelvin);
  const range = `(${print(low, "fraction", "metric", { decimals: 3 })} to ${print(high, "fraction", "metric", { decimals: 3 })}; ${counted(batches, "batch", "batches")})`;
  if (verdict === "not seen") {
    return [`These batches do not show that a warmer bed gives longer malt ${range}.`];
  }
  return [
    `Each ${degreeWord(units)} warmer in the bed goes with `,
    strong(
      `${print(Math.abs(estimate), "fraction", "metric", { decimals: 3 })} of the kernel ${verdict === "adds" ? "more" : "less"}`,
    ),
    ` at unloading ${range}.`,
  ];
}

/** What a few counts on the way would tell that one at unloading cannot. */
export const midwayCountsSentence: Sentence = [
  "With one count a batch and a fixed timetable, hours and temperature cannot be told apart. Two counts of 100\u00a0kernels on the way (at about half and at three quarters of the time) in ten batches, cool and warm ones, logged in acrospire-counts.csv, would give the hours sooner or later for each bed temperature.",
];
