import type { EnergyFact, Fact, PowerFact } from "../../report/fact.ts";
import type { LoadRow } from "../../report/loadRow.ts";
import { chanceReal } from "./chanceReal.ts";
import { batchesAMonth, type FactFrame, LATEST_RUNS, namedRuns, noLoss } from "./factFrame.ts";

const isDone = (load: LoadRow): load is LoadRow & { readonly unloadedAt: number } => load.unloadedAt !== null;

/** The month's loads, or the latest where it has few; earliest first. */
function latestLoads({ report, before, from }: FactFrame) {
  const done = report.loads.filter(isDone).filter(({ unloadedAt }) => unloadedAt < before);
  const inMonth = done.filter(({ unloadedAt }) => unloadedAt >= from).length;
  return { done, latest: inMonth === 0 ? [] : done.slice(-Math.max(LATEST_RUNS, inMonth)) };
}

/** Loads in which the heater could not hold what was asked: more of the latest than of those before. */
export function powerFacts(frame: FactFrame): readonly PowerFact[] {
  const { latest } = latestLoads(frame);
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
/** The same weeks of the year are the fair comparison: as many loads as a season brings. */
const FEWEST_TO_COMPARE = 20;

interface EnergyOfLoad {
  readonly perKilogram: number;
  readonly celsius: number;
}

function energyOf(load: LoadRow): EnergyOfLoad | null {
  const { energyKilowattHours, waterRemovedKilograms, airOverLoad, airAtLoading } = load;
  const celsius = airOverLoad?.celsius ?? airAtLoading?.celsius ?? null;
  if (energyKilowattHours === null || !waterRemovedKilograms || celsius === null) return null;
  return { perKilogram: energyKilowattHours / waterRemovedKilograms, celsius };
}

/** A line of energy on outside temperature, and the scatter about it: cold air takes more heat whatever else happens. */
function lineOf(loads: readonly EnergyOfLoad[]) {
  const n = loads.length;
  const mx = loads.reduce((sum, { celsius }) => sum + celsius, 0) / n;
  const my = loads.reduce((sum, { perKilogram }) => sum + perKilogram, 0) / n;
  const sxx = loads.reduce((sum, { celsius }) => sum + (celsius - mx) ** 2, 0);
  const sxy = loads.reduce((sum, { celsius, perKilogram }) => sum + (celsius - mx) * (perKilogram - my), 0);
  const slope = sxx > 0 ? sxy / sxx : 0;
  const expected = (celsius: number): number => my + slope * (celsius - mx);
  const rss = loads.reduce((sum, { celsius, perKilogram }) => sum + (perKilogram - expected(celsius)) ** 2, 0);
  const scatter = Math.sqrt(rss / Math.max(1, n - 2));
  // The line's own error, large beyond the weather that it has seen.
  const errorAt = (celsius: number): number => scatter * Math.sqrt(1 / n + (celsius - mx) ** 2 / Math.max(sxx, 1e-9));
  return { expected, scatter, errorAt };
}

/** Energy for a kilogram of water beyond what the outside air's temperature explains, over the latest loads. */
export function energyFacts(frame: FactFrame): readonly EnergyFact[] {
  const { done, latest } = latestLoads(frame);
  const earlier = done
    .slice(0, done.length - latest.length)
    .map(energyOf)
    .filter((load) => load !== null);
  const now = latest.flatMap((load) => energyOf(load) ?? []);
  const [first, last] = [latest[0], latest.at(-1)];
  if (earlier.length < FEWEST_TO_COMPARE || now.length < LATEST_RUNS || !first || !last) return [];
  const { expected, scatter, errorAt } = lineOf(earlier);
  const estimate = now.reduce((sum, { perKilogram, celsius }) => sum + perKilogram - expected(celsius), 0) / now.length;
  const middle = now.reduce((sum, { celsius }) => sum + celsius, 0) / now.length;
  const reach = 1.96 * Math.hypot(scatter / Math.sqrt(now.length), errorAt(middle));
  const perKilogramOver = { estimate, low: estimate - reach, high: estimate + reach };
  if (perKilogramOver.low <= 0) return [];
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
      loss: { ...noLoss, kilowattHours: estimate * water * batchesAMonth(frame) },
      beside: [],
    },
  ];
}

export const loadFacts = (frame: FactFrame): readonly Fact[] => [...powerFacts(frame), ...energyFacts(frame)];
