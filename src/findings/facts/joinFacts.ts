import type { Fact, MonthlyLoss } from "../../report/fact.ts";
import type { HouseCosts, ReviewFinding, SharedCause } from "../../report/reviewResult.ts";
import { noLoss } from "./factFrame.ts";

/**
 * What an hour of kiln, a kilogram of malt and so on are counted for where house.toml names no price: round figures, so that
 * the order of findings makes sense; never printed (common practice).
 */
const ROUND_PRICES = { perKilowattHour: 0.2, perLabourHour: 25, perKilogramMalt: 1.5, perRefusedBatch: 300 };
/** Somebody stands by a kiln for a part of each hour that it runs longer (common practice). */
const LABOUR_OF_KILN_HOUR = 0.25;
/** What costs nothing today still ranks above nothing: a drift that will leave its tolerance, a log that is not kept. */
const LEAST_COST = 5;

export function costOf(loss: MonthlyLoss, costs: HouseCosts): number | null {
  const priced: readonly (readonly [number, number | null])[] = [
    [loss.kilowattHours, costs.perKilowattHour],
    [loss.labourHours + LABOUR_OF_KILN_HOUR * loss.kilnHours, costs.perLabourHour],
    [loss.kilogramsMalt, costs.perKilogramMalt],
    [loss.refusedBatches, costs.perRefusedBatch],
  ];
  const known = priced.filter(([, price]) => price !== null);
  return known.length === 0 ? null : known.reduce((sum, [amount, price]) => sum + amount * (price ?? 0), 0);
}

const overlap = (a: Fact, b: Fact): boolean => a.from <= b.to && b.from <= a.to;

/** Belt, fan, damper or heater: slower, damper, dearer speak of too little air or heat; null for what does not. */
function airSays(fact: Fact): number | null {
  if (fact.kind === "heater") return 1;
  const over =
    fact.kind === "kiln hours"
      ? fact.hoursOver.estimate
      : fact.kind === "energy"
        ? fact.perKilogramOver.estimate
        : fact.kind === "chart" && fact.measure === "final_moisture_pct" && !fact.single
          ? fact.size
          : null;
  return over !== null && over > 0 ? 1 : null;
}

/** A scale that shows too much (1) makes yield high, and what the gain in mass says of the steep too: measured less that falls. */
function scaleSays(fact: Fact): number | null {
  if (fact.kind === "chart" && fact.measure === "dry_yield_pct" && !fact.single) return Math.sign(fact.size);
  return fact.kind === "steep" && fact.shape === "bias moved" ? -Math.sign(fact.points.estimate) : null;
}

/** Causes that one sees by what they show in several places, and which way a fact speaks of each. */
const CAUSES = [
  ["kiln air", airSays],
  ["scale", scaleSays],
] as const;

/** A name that stays the same from month to month while the trouble does. */
export function factId(fact: Fact): string {
  switch (fact.kind) {
    case "chart":
      return [fact.kind, fact.measure, fact.single ? fact.runs[0] : fact.size > 0 ? "up" : "down"].join(" ");
    case "kiln hours":
      return `${fact.kind} ${fact.hoursOver.estimate > 0 ? "slower" : "faster"}`;
    case "thermostat":
      return [fact.kind, fact.kiln, fact.hold].join(" ");
    case "logger":
    case "heater":
      return [fact.kind, fact.kiln].join(" ");
    case "variety":
      return [fact.kind, fact.variety].join(" ");
    case "lot":
      return [fact.kind, fact.lot].join(" ");
    case "steep":
      return [fact.kind, fact.shape].join(" ");
    case "bed":
      return [fact.kind, fact.bed].join(" ");
    default:
      return fact.kind;
  }
}

const addLoss = (a: MonthlyLoss, b: MonthlyLoss): MonthlyLoss => ({
  kilnHours: a.kilnHours + b.kilnHours,
  labourHours: a.labourHours + b.labourHours,
  kilowattHours: a.kilowattHours + b.kilowattHours,
  kilogramsMalt: a.kilogramsMalt + b.kilogramsMalt,
  refusedBatches: a.refusedBatches + b.refusedBatches,
});

/** Several witnesses of one thing: it is unreal only if every one of them is. */
const jointChance = (facts: readonly Fact[]): number =>
  1 - facts.reduce((miss, fact) => miss * (1 - fact.chanceReal), 1);

function findingOf(
  id: string,
  cause: ReviewFinding["cause"],
  facts: readonly Fact[],
  costs: HouseCosts,
): ReviewFinding {
  const loss = facts.reduce((sum, fact) => addLoss(sum, fact.loss), noLoss);
  const costAMonth = costOf(loss, costs);
  const chanceReal = jointChance(facts);
  const forRank = costAMonth ?? costOf(loss, { currency: null, ...ROUND_PRICES }) ?? 0;
  return { id, cause, facts, chanceReal, loss, costAMonth, rank: chanceReal * Math.max(LEAST_COST, forRank) };
}

/** Groups of facts of which each overlaps another in time. */
function groupsInTime(facts: readonly Fact[]): readonly (readonly Fact[])[] {
  const groups: Fact[][] = [];
  for (const fact of facts) {
    const mine = groups.find((group) => group.some((other) => overlap(fact, other)));
    if (mine === undefined) groups.push([fact]);
    else mine.push(fact);
  }
  return groups;
}

/** What one cause shows in several places at one time, the same way. */
function sharedCauses(facts: readonly Fact[]): readonly { cause: SharedCause; group: readonly Fact[] }[] {
  return CAUSES.flatMap(([cause, says]) =>
    [1, -1]
      .flatMap((way) => groupsInTime(facts.filter((fact) => says(fact) === way)))
      .filter((group) => new Set(group.map(({ kind }) => kind)).size > 1)
      .map((group) => ({ cause, group })),
  );
}

/**
 * Facts that one cause explains joined into one finding, ranked by what they cost a month times the chance that they are
 * real. Both holds of one thermostat that move the same way are one finding too.
 */
export function joinFacts(facts: readonly Fact[], costs: HouseCosts): readonly ReviewFinding[] {
  const joined = sharedCauses(facts);
  const taken = new Set(joined.flatMap(({ group }) => group));
  const alone = new Map<string, Fact[]>();
  for (const fact of facts) {
    if (taken.has(fact)) continue;
    const key = fact.kind === "thermostat" ? `thermostat ${fact.kiln} ${Math.sign(fact.movedKelvin)}` : factId(fact);
    alone.set(key, [...(alone.get(key) ?? []), fact]);
  }
  const findings = [
    ...joined.map(({ cause, group }) => findingOf(cause, cause, group, costs)),
    ...[...alone.values()].flatMap((group) => {
      const [first] = group;
      return first === undefined ? [] : [findingOf(factId(first), first.kind, group, costs)];
    }),
  ];
  return findings.toSorted((a, b) => b.rank - a.rank || a.id.localeCompare(b.id, "en"));
}
