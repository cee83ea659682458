import type { EnergyFact, Fact, PowerFact } from "../../report/fact.ts";
import { chanceReal } from "./chanceReal.ts";
import { batchesAMonth, type FactFrame, namedRuns, noLoss } from "./factFrame.ts";
import { latestLoads } from "./latestLoads.ts";

/** Loads in which the heater could not hold what was asked: more of the latest than of those before. */
export function powerFacts(frame: FactFrame): readonly PowerFact[] {
  const { latest } = latestLoads(frame.report.loads, frame);
  const limited = latest.filter(({ powerLimited }) => powerLimited);
  const [first, last] = [limited[0], limited.at(-1)];
  if (limited.length < 2 || first === undefined || last === undefined) return [];
  return [
    {
      kind: "power limit",
      loads: limited.length,
      ofLoads: latest.length,
      from: first.loadedAt,
      to: last.unloadedAt,
      runs: namedRuns(limited.flatMap(({ runs }) => runs)),
      runCount: limited.flatMap(({ runs }) => runs).length,
      // Each load is measured against a stated share of its hold: it is so, whatever its reason.
      chanceReal: 1,
      loss: noLoss,
      beside: [],
    },
  ];
}

/** A tenth of a kilowatt-hour for a kilogram of water beyond the season's is a trouble of middling size (common practice). */
const BEFORE = { share: 0.05, size: 0.1 };

/** Energy for a kilogram of water beyond what outside air and bed depth account for, over the latest loads. */
export function energyFacts(frame: FactFrame): readonly EnergyFact[] {
  const { latest } = latestLoads(frame.report.loads, frame);
  const { energyOver: perKilogramOver } = frame;
  const [first, last] = [latest[0], latest.at(-1)];
  if (perKilogramOver === null || perKilogramOver.low <= 0 || !first || !last) return [];
  const water =
    latest.reduce((sum, { waterRemovedKilograms }) => sum + (waterRemovedKilograms ?? 0), 0) / latest.length;
  const runs = latest.flatMap((load) => load.runs);
  return [
    {
      kind: "energy",
      perKilogramOver,
      from: first.loadedAt,
      to: last.unloadedAt,
      runs: namedRuns(runs),
      runCount: runs.length,
      chanceReal: chanceReal(perKilogramOver, BEFORE),
      loss: { ...noLoss, kilowattHours: perKilogramOver.estimate * water * batchesAMonth(frame) },
      beside: [],
    },
  ];
}

export const loadFacts = (frame: FactFrame): readonly Fact[] => [...powerFacts(frame), ...energyFacts(frame)];
