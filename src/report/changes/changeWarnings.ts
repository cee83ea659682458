import { mean } from "../../analysis/summary.ts";
import { printDate } from "../../units/instant.ts";
import { printNumber } from "../../units/print.ts";
import type { ChangedMeasure, ChangeWarning } from "../changesResult.ts";
import type { EventRow } from "../eventRow.ts";
import type { SidedRow } from "./changeEffect.ts";
import { beginningOf, type ChangeWindow, isLasting } from "./changeWindow.ts";
import { sharedSeason } from "./season.ts";
import { touchTheSame } from "./touchedMeasures.ts";

/** A side with fewer runs than this is called few. */
const FEW = 12;
/** Below this share of the year in common the two sides are of different seasons. */
const SAME_SEASON = 1 / 3;
/** A load that differs by more than this is a load of another size. */
const SAME_LOAD_PERCENT = 3;

export interface WarningGround {
  readonly change: EventRow;
  readonly events: readonly EventRow[];
  readonly window: ChangeWindow;
  /** Of the measure that was compared over most runs. */
  readonly rows: readonly SidedRow[];
  readonly measures: readonly ChangedMeasure[];
  readonly oneSided: readonly string[];
  readonly timeZone: string;
}

/** What a reader must know before believing a comparison. */
export function changeWarnings(ground: WarningGround): readonly ChangeWarning[] {
  const { rows, oneSided, timeZone } = ground;
  const side = (after: boolean): readonly SidedRow[] => rows.filter(({ isAfter }) => isAfter === after);
  const [before, after] = [side(false), side(true)];
  const warnings = [...otherEvents(ground)];
  if (before.length > 0 && after.length > 0) {
    const moments = (of: readonly SidedRow[]): number[] => of.map(({ at }) => at);
    const shared = sharedSeason(moments(before), moments(after), timeZone);
    if (shared < SAME_SEASON) {
      warnings.push({
        kind: "season",
        what: "Before and after lie in different seasons, so that part of a difference may be the season’s.",
      });
    }
    warnings.push(...loadSize(before, after, ground.measures));
  }
  const fewer = Math.min(before.length, after.length);
  if (fewer < FEW) {
    const which = before.length <= after.length ? "before" : "after";
    warnings.push({ kind: "few runs", what: `There are only ${fewer} batches ${which} to compare with.` });
  }
  if (oneSided.length > 0) {
    const names = oneSided.length === 1 ? oneSided[0] : `${oneSided.slice(0, -1).join(", ")} and ${oneSided.at(-1)}`;
    warnings.push({
      kind: "other variety",
      what: `Batches of ${names} stand on one side alone and are left out.`,
    });
  }
  return warnings;
}

function otherEvents({ change, events, window, measures, timeZone }: WarningGround): ChangeWarning[] {
  const { at, from, to, after } = window;
  const found: ChangeWarning[] = [];
  for (const event of events) {
    const begins = beginningOf(event, timeZone);
    if (event === change || event.kind === "new-baseline" || begins < from || begins >= to) continue;
    if (begins === from || !touchTheSame(event.scope, measures)) continue;
    // An incident passes; a lasting event of the same scope bounds the comparison unless it fell on the same day.
    if (!isLasting(event)) continue;
    const when = begins === at ? "the same day" : begins < at ? "before it" : "after it";
    found.push({
      kind: "another event",
      what: `Within the comparison, ${when}: ${event.what} (${event.kind}, ${printDate(begins, timeZone)}).`,
    });
  }
  if (after?.kind === "repair") {
    found.push({
      kind: "another event",
      what: `The comparison ends with a repair: ${after.what}. What was mended on ${printDate(to, timeZone)} may have been at work for a while before.`,
    });
  }
  return found;
}

function loadSize(
  before: readonly SidedRow[],
  after: readonly SidedRow[],
  measures: readonly ChangedMeasure[],
): ChangeWarning[] {
  if (!measures.includes("kiln_hours") && !measures.includes("energy_kwh")) return [];
  const grain = (rows: readonly SidedRow[]): number[] =>
    rows.map(({ row }) => row.load?.grainInKilograms ?? null).filter((kilograms) => kilograms !== null);
  const [was, is] = [grain(before), grain(after)];
  if (was.length < before.length / 2 || is.length < after.length / 2 || was.length === 0 || is.length === 0) return [];
  const percent = 100 * (mean(is) / mean(was) - 1);
  if (Math.abs(percent) < SAME_LOAD_PERCENT) return [];
  return [
    {
      kind: "load size",
      what: `Loads held ${printNumber(Math.abs(percent), 0)} % ${percent < 0 ? "less" : "more"} grain after than before; hours and energy are counted a load, not a tonne.`,
    },
  ];
}
