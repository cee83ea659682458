import type { HouseCosts } from "../../report/reviewResult.ts";
import type { UnitSystem } from "../../units/unitSystem.ts";

/** Who reads a review, and in which money. */
export interface ReviewReader {
  readonly units: UnitSystem;
  readonly timeZone: string;
  readonly costs: HouseCosts;
}
