import type { MonthReview, ReviewFinding } from "../../src/report/reviewResult.ts";
import { localDate } from "../demo/clock.ts";
import { columnNotKept } from "../demo/leaveBlank.ts";
import type { Plant, PlantKind } from "../demo/plant.ts";
import { affectedRuns } from "./affectedRuns.ts";
import { namesPlant, type PlantedTruth } from "./namesPlant.ts";
import { PLANT_SIZES } from "./plantSizes.ts";
import type { ReviewDesk } from "./reviewDesk.ts";
import type { SoundHouse } from "./soundHouse.ts";
import { plantDate, studyHouse } from "./studyHouse.ts";

export const SIZE_NAMES = ["small", "middle", "large"] as const;
export type SizeName = (typeof SIZE_NAMES)[number];

export interface TrialWanted {
  readonly seed: number;
  readonly kind: PlantKind;
  readonly size: SizeName;
}

/** One trouble in one house, at the first month-end with six runs that it touched. */
export interface PlantedTrial extends TrialWanted {
  readonly from: string;
  /** Null where too few runs were touched before the logs end. */
  readonly month: string | null;
  /** Among the first five findings. */
  readonly isNamed: boolean;
  /** So it would be by the same house's findings of that month had nothing been planted. */
  readonly isNamedAnyway: boolean;
  /** All findings in order, and those that the sound house has too. */
  readonly findings: readonly string[];
  readonly anyway: readonly string[];
}

export const ENOUGH_RUNS = 6;
export const FIRST_FINDINGS = 5;

export function plantOf({ seed, kind, size }: TrialWanted): Plant {
  const { sizes, factor, eitherWay } = PLANT_SIZES[kind];
  const sign = eitherWay && seed % 2 === 0 ? -1 : 1;
  return { kind, size: (sizes[SIZE_NAMES.indexOf(size)] ?? Number.NaN) * factor * sign, from: plantDate(seed, kind) };
}

/**
 * Plants one trouble in one house and reads its month in review, beside that of the same house without it.
 *
 * @param sound the house of the same seed
 */
export async function plantedTrial(desk: ReviewDesk, sound: SoundHouse, wanted: TrialWanted): Promise<PlantedTrial> {
  const { seed, kind } = wanted;
  if (sound.seed !== seed)
    throw new RangeError(`plantedTrial requires the sound house of seed ${seed}; got ${sound.seed}`);
  const plant = plantOf(wanted);
  const house = studyHouse(seed, plant);
  const sixth = affectedRuns(house, plant)[ENOUGH_RUNS - 1];
  const trial = { ...wanted, from: plant.from };
  if (sixth === undefined) {
    return { ...trial, month: null, isNamed: false, isNamedAnyway: false, findings: [], anyway: [] };
  }
  const month = localDate(sixth.at).slice(0, 7);
  const ofLot = house.batches.filter(({ planned }) => kind === "uneven lot" && planned.lot.unevenness > 1);
  const truth: PlantedTruth = {
    lot: ofLot[0]?.planned.lot.lot ?? null,
    lotRuns: new Set(ofLot.map(({ planned }) => planned.run)),
    field: kind === "column not kept" ? columnNotKept(seed).field : null,
  };
  const names = (findings: readonly ReviewFinding[]): boolean =>
    findings.slice(0, FIRST_FINDINGS).some(({ facts }) => facts.some((fact) => namesPlant(plant, truth, fact)));
  const found = findingsOf((await desk.review(house, month)).months, month);
  const anyway = findingsOf(sound.months, month);
  return {
    ...trial,
    month,
    isNamed: names(found),
    isNamedAnyway: names(anyway),
    findings: found.map(({ id }) => id),
    anyway: anyway.map(({ id }) => id),
  };
}

const findingsOf = (months: readonly MonthReview[], month: string): readonly ReviewFinding[] =>
  months.find(({ totals }) => totals.month === month)?.findings ?? [];
