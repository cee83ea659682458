import { stepEffect } from "../../analysis/beforeAfter/stepEffect.ts";
import { moreRunsAfter } from "../../analysis/beforeAfter/trialPower.ts";
import { twoSample } from "../../analysis/beforeAfter/twoSample.ts";
import { doesNotVary, type PredictorColumn } from "../../analysis/factorisation.ts";
import { isFitFault, sayFitFault } from "../../analysis/fitFault.ts";
import type { Interval } from "../../analysis/regressionFit.ts";
import { mean, sampleStandardDeviation } from "../../analysis/summary.ts";
import type { ChangedMeasure, ChangeEffect } from "../changesResult.ts";
import type { EventRow } from "../eventRow.ts";
import { aimOf } from "../targetMoisture.ts";
import { nearestTarget } from "../targetRow.ts";
import { alteredName, alteredStem, alteredValue, isHeldBy } from "./alteredColumn.ts";
import type { ChangeWindow } from "./changeWindow.ts";
import type { ComparedGround, ComparedRow } from "./comparedRow.ts";
import { adjustmentFor } from "./covariates.ts";
import type { PlaceboBook } from "./placeboBook.ts";
import { seasonColumns } from "./season.ts";
import type { DatedRow } from "./standsAt.ts";
import { tellableOf } from "./touchedMeasures.ts";
import { verdictOf } from "./verdict.ts";

/** Fewer runs than this on a side say nothing of how far runs differ. */
export const FEWEST_A_SIDE = 5;
/** Left over for the spread once everything is fitted. */
const FEWEST_DEGREES = 6;
/** From here on two causes are not parted: the usual mark (Marquardt 1970, Technometrics 12, 591–612; from memory). */
const MOST_INFLATION = 10;
const POWER = 0.8;

/** A row of a comparison and the side it stands on. */
export interface SidedRow {
  readonly row: ComparedRow;
  readonly at: number;
  readonly isAfter: boolean;
}

/** Rows of one measure that fall into a window, each on its side. @param dated in time order */
export function rowsInWindow(
  dated: readonly DatedRow[],
  { at: changedAt, from, to }: ChangeWindow,
): readonly SidedRow[] {
  const found: SidedRow[] = [];
  for (const { row, at, until } of dated) {
    if (at < from || at >= to) continue;
    // What lay on the floor on the day of the change is neither before nor after.
    if (at < changedAt && until !== null && until > changedAt) continue;
    found.push({ row, at, isAfter: at >= changedAt });
  }
  return found;
}

/** Varieties, and kilns, that stand on one side alone can tell nothing of the change. */
export function onBothSides(rows: readonly SidedRow[]): {
  readonly kept: readonly SidedRow[];
  readonly oneSided: readonly string[];
} {
  const sides = new Map<string, Set<boolean>>();
  const groupOf = ({ row }: SidedRow): string => `${row.variety}\n${row.kiln}`;
  for (const sided of rows) sides.set(groupOf(sided), (sides.get(groupOf(sided)) ?? new Set()).add(sided.isAfter));
  const kept = rows.filter((sided) => sides.get(groupOf(sided))?.size === 2);
  const keptVarieties = new Set(kept.map(({ row }) => row.variety));
  const oneSided = new Set(rows.map(({ row }) => row.variety).filter((variety) => !keptVarieties.has(variety)));
  return { kept, oneSided: [...oneSided].sort() };
}

export interface EffectRequest {
  readonly change: EventRow;
  readonly measure: ChangedMeasure;
  readonly window: ChangeWindow;
  readonly rows: readonly SidedRow[];
  /** All of the window, with those of varieties that stand on one side alone. */
  readonly rowsThereAre: readonly SidedRow[];
  readonly ground: ComparedGround;
  readonly placebos: PlaceboBook;
}

/** What one change came to in one measure; a sentence where it cannot be compared. */
export function changeEffect({
  change,
  measure,
  window,
  rows,
  rowsThereAre,
  ground,
  placebos,
}: EffectRequest): ChangeEffect | string {
  const altered = alteredStem(change.alters);
  const wish = { measure, scope: change.scope, altered };
  const sided = new Map(rows.map((one) => [one.row, one]));
  const sideOf = (row: ComparedRow): boolean => sided.get(row)?.isAfter ?? false;
  const momentOf = (row: ComparedRow): number => sided.get(row)?.at ?? 0;
  const adjustment = adjustmentFor(
    rows.map(({ row }) => row),
    wish,
    ground,
  );
  const { rows: kept } = adjustment;
  const [before, after] = [kept.filter((row) => !sideOf(row)), kept.filter(sideOf)];
  if (before.length < FEWEST_A_SIDE || after.length < FEWEST_A_SIDE) {
    const isOfLoads = measure === "kiln_hours" || measure === "energy_kwh";
    const [one, many] = isOfLoads ? ["load", "loads"] : ["batch", "batches"];
    const count = (n: number): string => `${n} ${n === 1 ? one : many}`;
    const afterThereAre = rowsThereAre.filter(({ isAfter }) => isAfter).length;
    const beforeThereAre = rowsThereAre.length - afterThereAre;
    const takes = `it takes ${FEWEST_A_SIDE} on each side.`;
    if (afterThereAre === 0 || beforeThereAre === 0) {
      return `${count(beforeThereAre)} before and ${count(afterThereAre)} after can be compared; ${takes}`;
    }
    const alone = rowsThereAre.length - rows.length;
    const others = alone === 0 ? "" : ` (and ${alone} of varieties that stand on one side alone cannot)`;
    return `${count(before.length)} before and ${count(after.length)} after can be compared${others}; ${takes}`;
  }
  const season = adjustment.words.length > 0 && kept[0]?.model ? [] : seasonColumns(kept.map(momentOf));
  const columns = [...adjustment.columns, ...season];
  const values = kept.map(({ value }) => value);
  const isAfter = kept.map(sideOf);
  const found = stepEffect(columns, values, isAfter);
  if (isFitFault(found)) return sayFitFault(found, { observations: "batches", response: "value" });
  if (found.degreesOfFreedom < FEWEST_DEGREES) {
    return `${kept.length} batches are too few beside ${columns.length} things to adjust for.`;
  }
  const total: Interval = intervalOf(found.step);
  const placebo = placebos.of(wish, window);
  const usual = mean(values);
  const tellable = tellableOf(measure, usual);
  const aim = meanAim(measure, kept, ground);
  const { verdict, doubtedByPlacebo, noBiggerThan } = verdictOf({
    measure,
    scope: change.scope,
    before: found.before.estimate,
    total,
    aim,
    tellable,
    placebo,
  });
  const wantsMore = verdict === "cannot be told" && !doubtedByPlacebo;
  const isOpen = window.after === null;
  const moreBy = (standardError: number): number | null => {
    const [runsBefore, runsAfter] = [before.length, after.length];
    const { degreesOfFreedom } = found;
    return moreRunsAfter({ runsBefore, runsAfter, standardError, degreesOfFreedom }, tellable, POWER);
  };
  const moreRuns =
    wantsMore && isOpen ? moreBy(Math.max(found.step.robustStandardError, found.step.serialStandardError ?? 0)) : null;
  // Were weather and varieties alike on both sides, the spread alone would count: fewer runs than that will not do.
  const moreRunsAtLeast =
    wantsMore && isOpen && moreRuns === null
      ? moreBy(found.residualStandardDeviation * Math.sqrt(1 / before.length + 1 / after.length))
      : null;
  return {
    measure,
    before: intervalOf(found.before),
    after: intervalOf(found.after),
    runsBefore: before.length,
    runsAfter: after.length,
    total,
    plain: plainDifference(before, after),
    beyond: altered === null ? null : beyondAltered(kept, altered, wish, ground, isAfter, season),
    placebo,
    verdict,
    doubtedByPlacebo,
    noBiggerThan,
    tellable,
    moreRuns,
    moreRunsAtLeast,
    whyNoMore:
      !wantsMore || moreRuns !== null || moreRunsAtLeast !== null
        ? null
        : isOpen
          ? "too few before"
          : "comparison is closed",
    adjustedFor: [...adjustment.words, ...(season.length > 0 ? ["season"] : [])],
    spread: found.residualStandardDeviation,
    isSerial: found.step.serialStandardError !== null,
    aim,
    points: kept.map((row, at) => ({
      run: row.name,
      at: momentOf(row),
      value: row.value,
      adjusted: found.adjusted[at] as number,
      isAfter: sideOf(row),
    })),
  };
}

const intervalOf = ({ estimate, low, high }: Interval): Interval => ({ estimate, low, high });

function plainDifference(before: readonly ComparedRow[], after: readonly ComparedRow[]): Interval {
  return intervalOf(
    twoSample(
      before.map(({ value }) => value),
      after.map(({ value }) => value),
    ),
  );
}

function meanAim(measure: ChangedMeasure, rows: readonly ComparedRow[], { targets }: ComparedGround): number | null {
  const aims = rows.map(({ variety, grain }) => {
    const target = nearestTarget(targets, measure, variety, grain);
    return target === null ? null : aimOf(target);
  });
  const named = aims.filter((aim) => aim !== null);
  return named.length < aims.length || named.length === 0 ? null : mean(named);
}

/**
 * What is left of the step once the altered column stands beside it, with all that Kiln hours would use. Null where that
 * column is not logged, did not vary within either side, or moved so much with the change that the two are not parted.
 */
function beyondAltered(
  rows: readonly ComparedRow[],
  altered: string,
  { measure }: { readonly measure: ChangedMeasure },
  ground: ComparedGround,
  isAfter: readonly boolean[],
  season: readonly PredictorColumn[],
): Interval | null {
  const values = rows.map((row) => alteredValue(altered, row));
  const known = values.filter((value) => value !== null);
  if (known.length < values.length) return null;
  const spreads = [false, true].map((side) => {
    const own = known.filter((_, at) => isAfter[at] === side);
    return own.length < 2 ? 0 : sampleStandardDeviation(own);
  });
  if (Math.max(...spreads) === 0 || doesNotVary(known)) return null;
  const full = adjustmentFor(rows, { measure, scope: "kiln", altered: null }, ground);
  // A row that lacks what the fuller model needs would change the comparison itself.
  if (full.rows.length < rows.length) return null;
  const own = { name: `altered ${altered}`, label: alteredName(altered), values: known };
  const columns = [...full.columns, ...(isHeldBy(altered, full.columns) ? [] : [own]), ...season];
  const found = stepEffect(
    columns,
    rows.map(({ value }) => value),
    isAfter,
  );
  if (isFitFault(found) || found.degreesOfFreedom < FEWEST_DEGREES || found.varianceInflation >= MOST_INFLATION) {
    return null;
  }
  return intervalOf(found.step);
}
