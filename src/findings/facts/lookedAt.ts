import type { Fact } from "../../report/fact.ts";
import type { MonthReview, PromisedAgainstMade } from "../../report/reviewResult.ts";
import type { RunRow } from "../../report/runRow.ts";
import { bestModel } from "../bestModel.ts";
import type { FactFrame } from "./factFrame.ts";

export type LookedAt = MonthReview["lookedAt"][number];

type Looked = readonly [kind: Fact["kind"], count: number, tooLittle: boolean];

/** A month's own loads, as far as they are done. */
function loadsOfMonth({ report, from, before }: FactFrame) {
  return report.loads.filter(({ unloadedAt }) => unloadedAt !== null && unloadedAt >= from && unloadedAt < before);
}

const isIn = (frame: FactFrame): ((run: string) => boolean) => {
  const names = new Set(frame.monthRuns.map(({ run }) => run));
  return (run) => names.has(run);
};

function lookedAtMalt(frame: FactFrame): readonly Looked[] {
  const { charts } = frame.report.yieldMoisture;
  const mine = isIn(frame);
  // A batch is judged where limits stand.
  const judged = new Set(
    charts.flatMap(({ runs }) => runs.flatMap(({ run, sigma }) => (sigma !== null && mine(run) ? [run] : []))),
  );
  const sampled = charts.flatMap(({ within, runs }) =>
    within === null ? [] : runs.filter(({ run, samples }) => samples > 1 && mine(run)),
  );
  return [
    ["chart", judged.size, judged.size === 0],
    ["uneven batch", sampled.length, sampled.length === 0],
  ];
}

function lookedAtKiln(frame: FactFrame): readonly Looked[] {
  const { kilnHours, thermostat } = frame.report;
  const loads = loadsOfMonth(frame);
  const names = new Set(loads.map(({ load }) => load));
  const fitted = bestModel(kilnHours.kilnHours)?.loads.filter(({ load }) => names.has(load)).length ?? 0;
  const isMine = ({ load }: { readonly load: string }): boolean => names.has(load);
  const held = thermostat.kilns
    .flatMap((kiln) => [kiln.drying, kiln.cure])
    .reduce((most, hold) => {
      const judged = hold?.stretches.at(-1)?.alarm != null;
      return Math.max(most, judged ? (hold?.points.filter(isMine).length ?? 0) : 0);
    }, 0);
  const read = thermostat.kilns.reduce((sum, kiln) => sum + kiln.loads.filter(isMine).length, 0);
  const switched = thermostat.kilns
    .flatMap((kiln) => kiln.loads)
    .filter((load) => isMine(load) && load.dryingDuty !== null).length;
  const metered = loads.filter(
    ({ energyKilowattHours, waterRemovedKilograms }) => energyKilowattHours !== null && waterRemovedKilograms !== null,
  ).length;
  const withReadings = loads.filter(({ powerLimitedShare }) => powerLimitedShare !== null).length;
  return [
    ["kiln hours", fitted, fitted === 0],
    ["thermostat", held, held === 0],
    ["logger", read, read === 0],
    ["energy", metered, metered === 0],
    ["power limit", withReadings, withReadings === 0],
    ["heater", switched, switched === 0],
  ];
}

function lookedAtFloor(frame: FactFrame): readonly Looked[] {
  const { steeps, acrospires } = frame.report.steepGermination;
  const mine = isIn(frame);
  const counted = acrospires.filter(({ run }) => mine(run));
  const steeped = steeps.filter(({ run, steepOutPercent }) => steepOutPercent !== null && mine(run)).length;
  const aimed = counted.filter(({ targets }) => targets !== null).length;
  const latest = new Set(frame.latestRuns.map(({ run }) => run));
  const ofBeds = acrospires.filter(
    ({ run, beds }) => latest.has(run) && beds.filter(({ meanLength }) => meanLength !== null).length > 1,
  ).length;
  return [
    ["steep", steeped, steeped === 0],
    ["timetable", aimed, aimed === 0],
    // A house with a single bed has nothing to compare, which is no lack.
    ...(acrospires.some(({ beds }) => beds.length > 1) ? [["bed", ofBeds, ofBeds < 3] as const] : []),
  ];
}

function lookedAtGrain(frame: FactFrame): readonly Looked[] {
  const { details, scores } = frame.report.varieties;
  const mine = isIn(frame);
  const compared = new Set(
    details.flatMap(({ splits }) => splits.flatMap(({ lots }) => (lots.length > 1 ? lots.map(({ lot }) => lot) : []))),
  );
  const ofLots = frame.monthRuns.filter(({ lot }: RunRow) => lot !== null && compared.has(lot)).length;
  const tested = details.flatMap(({ lab }) => lab).filter(({ values }) => values.moisture_pct !== undefined).length;
  // The best has an interval wherever varieties were held against each other at all.
  const held = scores.some(({ onTarget }) => onTarget !== null && onTarget.high !== null);
  const scored = held ? scores.filter(({ standing }) => standing === "full") : [];
  const ofScored = scored.flatMap(({ batchesInOrder }) => batchesInOrder.filter(({ run }) => mine(run))).length;
  return [
    ["lot", ofLots, ofLots === 0],
    ["laboratory", tested, tested < 4],
    // Chances without an interval are not held against each other.
    ...(scored.length === 0 ? [] : [["variety", ofScored, ofScored === 0] as const]),
  ];
}

/**
 * Which kinds of fact a month was looked through for, and on how many of its batches or loads, so that a quiet month can say
 * so; and of which there was too little. Beds are judged on the latest batches, laboratory results are counted over all time.
 */
export function lookedAt(frame: FactFrame, promised: PromisedAgainstMade | null): readonly LookedAt[] {
  if (frame.monthRuns.length === 0) return [];
  const looked: readonly Looked[] = [
    ...lookedAtKiln(frame),
    ...lookedAtMalt(frame),
    ...lookedAtFloor(frame),
    ...lookedAtGrain(frame),
    ["logs", frame.monthRuns.length, false],
    ...(promised === null ? [] : [["orders", promised.orders.length, promised.tooLittle !== null] as const]),
  ];
  return looked.map(([kind, count, tooLittle]) => ({ kind, count, tooLittle }));
}
