import type { BedLag, SteepGerminationResult } from "../../report/steepGerminationResult.ts";
import { print, printNumber } from "../../units/print.ts";
import type { UnitSystem } from "../../units/unitSystem.ts";
import { counted } from "../counted.ts";
import { type Sentence, strong } from "../sentence.ts";
import { length, lengthRange } from "./measureWords.ts";

type Beds = SteepGerminationResult["beds"];
type BedMean = Beds["byBed"][number];

/** Less than this, K, is no difference between two thermometers in grain. */
const AS_WARM = 0.25;

const clear = ({ difference }: BedMean): boolean => difference.low > 0 || difference.high < 0;

/** A bed that lags on the whole, the one that lags most; null where none does beyond its interval. */
export function laggingBed({ byBed }: Beds): BedMean | null {
  const lagging = byBed.filter((bed) => clear(bed) && bed.difference.estimate < 0);
  return [...lagging].sort((a, b) => a.difference.estimate - b.difference.estimate)[0] ?? null;
}

const size = (difference: number): string => `${length(Math.abs(difference))} of the kernel`;

const warmth = (kelvin: number | null, units: UnitSystem): string =>
  kelvin === null || Math.abs(kelvin) < AS_WARM
    ? ""
    : `, ${print(Math.abs(kelvin), "temperatureDifference", units)} ${kelvin > 0 ? "warmer" : "cooler"} on the whole`;

/** Whether a bed lags on the whole. Empty where no batch has two beds counted. */
export function bedsSentence(beds: Beds, units: UnitSystem): Sentence {
  const { compared, byBed, lags } = beds;
  if (compared === 0) return [];
  const off = byBed.filter(clear);
  const batches = counted(compared, "batch", "batches");
  if (off.length > 0) {
    const said = off.flatMap(
      ({ bed, difference, runs, warmerByKelvin }, i): Sentence => [
        i === 0 ? "Bed " : "; bed ",
        strong(`${bed} ${difference.estimate < 0 ? "lags" : "runs ahead"} by ${size(difference.estimate)}`),
        ` (${lengthRange(difference)}; ${counted(runs, "batch", "batches")}${warmth(warmerByKelvin, units)})`,
      ],
    );
    return [...said, `, against the other beds of the same batches, ${batches} compared.`];
  }
  return lags.length === 0
    ? [`The beds of one batch grow alike in ${batches} that have two or more counted.`]
    : [`No bed lags on the whole, over ${batches} that have two or more counted.`];
}

/** In how many batches a bed stood apart, which the batch's mean hides. */
export function lagsSentence({ lags, compared }: Beds): Sentence {
  if (lags.length === 0) return [];
  const batches = new Set(lags.map(({ run }) => run)).size;
  return [
    "In ",
    strong(`${printNumber(batches, 0)} of ${counted(compared, "batch", "batches")}`),
    " a bed stood apart from its neighbours beyond counting error, which the batch’s mean would hide.",
  ];
}

function temperatureSaid(kelvin: number | null, behind: boolean, units: UnitSystem): string {
  if (kelvin === null) return "its bed temperature is not logged beside theirs.";
  const look = "look at turning, depth and water.";
  if (Math.abs(kelvin) < AS_WARM) return `it stood as warm as they: ${look}`;
  const stood = `it stood ${print(Math.abs(kelvin), "temperatureDifference", units)} ${kelvin > 0 ? "cooler" : "warmer"}`;
  return kelvin > 0 === behind ? `${stood}.` : `${stood}, which does not explain it: ${look}`;
}

/** One bed that lagged or ran ahead, without its batch: the page sets the link before it. */
export function lagSentence({ bed, difference, coolerByKelvin }: BedLag, units: UnitSystem): Sentence {
  const behind = difference.estimate < 0;
  const [near, far] = [Math.abs(difference.low), Math.abs(difference.high)].sort((a, b) => a - b) as [number, number];
  return [
    `bed ${bed}: `,
    strong(`${size(difference.estimate)} ${behind ? "behind" : "ahead of"}`),
    ` the others (${length(near)} to ${length(far)}); ${temperatureSaid(coolerByKelvin, behind, units)}`,
  ];
}

/** The clause of the page's answer. */
export function bedsClause(beds: Beds): Sentence {
  const lagging = laggingBed(beds);
  if (lagging !== null) {
    return [
      "Bed ",
      strong(`${lagging.bed} lags`),
      ` the others of its batches by ${size(lagging.difference.estimate)}.`,
    ];
  }
  const batches = new Set(beds.lags.map(({ run }) => run)).size;
  if (batches === 0) return [];
  return [
    "No bed lags on the whole, but in ",
    strong(`${printNumber(batches, 0)} of ${counted(beds.compared, "batch", "batches")}`),
    " one stood apart.",
  ];
}
