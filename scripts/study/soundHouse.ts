import type { MonthReview } from "../../src/report/reviewResult.ts";
import type { SimulatedHouse } from "../demo/simulateHouse.ts";
import type { ReviewDesk } from "./reviewDesk.ts";
import { studyHouse } from "./studyHouse.ts";

/** A house in which nothing is planted, with every month's review: the quiet one, and what planted ones are held against. */
export interface SoundHouse {
  readonly seed: number;
  readonly house: SimulatedHouse;
  readonly months: readonly MonthReview[];
}

export async function soundHouse(desk: ReviewDesk, seed: number): Promise<SoundHouse> {
  const house = studyHouse(seed, null);
  const { months } = await desk.review(house, null);
  return { seed, house, months };
}
