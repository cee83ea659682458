import type { Fact } from "../../report/fact.ts";
import { chartFacts } from "./chartFacts.ts";
import type { FactFrame } from "./factFrame.ts";
import { floorFacts } from "./floorFacts.ts";
import { heaterFacts } from "./heaterFacts.ts";
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
  heaterFacts,
  steepFacts,
  floorFacts,
  varietyFacts,
  logsFacts,
];

/** Less sure than this is not worth a working maltster's morning (set with quiet simulated houses). */
export const LEAST_CHANCE = 0.8;

/** The other hold of a thermostat that surely moves, alarmed the same way: less sure by itself, but a witness of the same. */
function isWitness(fact: Fact, sure: readonly Fact[]): boolean {
  return (
    fact.kind === "thermostat" &&
    sure.some(
      (other) =>
        other.kind === "thermostat" &&
        other.kiln === fact.kiln &&
        Math.sign(other.movedKelvin) === Math.sign(fact.movedKelvin),
    )
  );
}

/** All that there is to say of a month, in no order. */
export function allFacts(frame: FactFrame): readonly Fact[] {
  const facts = sources.flatMap((source) => source(frame));
  const sure = facts.filter(({ chanceReal }) => chanceReal >= LEAST_CHANCE);
  return facts.filter((fact) => sure.includes(fact) || isWitness(fact, sure));
}
