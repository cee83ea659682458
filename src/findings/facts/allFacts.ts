import type { Fact } from "../../report/fact.ts";
import { chartFacts } from "./chartFacts.ts";
import type { FactFrame } from "./factFrame.ts";
import { floorFacts } from "./floorFacts.ts";
import { hoursFacts } from "./hoursFacts.ts";
import { loadFacts } from "./loadFacts.ts";
import { logsFacts } from "./logsFacts.ts";
import { steepFacts } from "./steepFacts.ts";
import { thermostatFacts } from "./thermostatFacts.ts";
import { varietyFacts } from "./varietyFacts.ts";

/** Where facts come from; each looks at one subject. */
const sources: readonly ((frame: FactFrame) => readonly Fact[])[] = [
  hoursFacts,
  chartFacts,
  thermostatFacts,
  loadFacts,
  steepFacts,
  floorFacts,
  varietyFacts,
  logsFacts,
];

/** Less sure than this is not worth a working maltster's morning (set with quiet simulated houses). */
export const LEAST_CHANCE = 0.8;

/** All that there is to say of a month, surer things and less sure ones, in no order. */
export function allFacts(frame: FactFrame): readonly Fact[] {
  return sources.flatMap((source) => source(frame)).filter(({ chanceReal }) => chanceReal >= LEAST_CHANCE);
}
