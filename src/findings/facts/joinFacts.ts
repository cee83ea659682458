import type { Fact, MonthlyLoss } from "../../report/fact.ts";
import type { HouseCosts, ReviewFinding } from "../../report/reviewResult.ts";
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

/** Troubles that one cause shows in several places: belt, fan, damper or heater slow the kiln, leave malt damp and take more energy. */
const AIR_SHOWS_IN: readonly Fact["kind"][] = ["kiln hours", "energy", "chart"];

const overlap = (a: Fact, b: Fact): boolean => a.from <= b.to && b.from <= a.to;

/** Does this speak of too little air or heat: slower, damper, dearer? */
function speaksOfAir(fact: Fact): boolean {
  if (fact.kind === "kiln hours") return fact.hoursOver.estimate > 0;
  if (fact.kind === "energy") return fact.perKilogramOver.estimate > 0;
  return fact.kind === "chart" && fact.measure === "final_moisture_pct" && fact.size > 0 && !fact.single;
}

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

/**
 * Facts that one cause explains joined into one finding, ranked by what they cost a month times the chance that they are
 * real. Both holds of one thermostat that move the same way are one finding too.
 */
export function joinFacts(facts: readonly Fact[], costs: HouseCosts): readonly ReviewFinding[] {
  const air = facts.filter((fact) => AIR_SHOWS_IN.includes(fact.kind) && speaksOfAir(fact));
  const joined = groupsInTime(air).filter((group) => new Set(group.map(({ kind }) => kind)).size > 1);
  const taken = new Set(joined.flat());
  const alone = new Map<string, Fact[]>();
  for (const fact of facts) {
    if (taken.has(fact)) continue;
    const key = fact.kind === "thermostat" ? `thermostat ${fact.kiln} ${Math.sign(fact.movedKelvin)}` : factId(fact);
    alone.set(key, [...(alone.get(key) ?? []), fact]);
  }
  const findings = [
    ...joined.map((group) => findingOf("kiln air", "kiln air", group, costs)),
    ...[...alone.values()].flatMap((group) => {
      const [first] = group;
      return first === undefined ? [] : [findingOf(factId(first), first.kind, group, costs)];
    }),
  ];
  return findings.toSorted((a, b) => b.rank - a.rank || a.id.localeCompare(b.id, "en"));
}
