import { printIsoDate } from "../../units/instant.ts";
import type { ChangedMeasure, ChangeEffect, ChangeResult, ChangesResult } from "../changesResult.ts";
import type { EventRow } from "../eventRow.ts";
import { usualFilling } from "../kilnHours/filling.ts";
import type { KilnHoursResult } from "../kilnHoursResult.ts";
import type { LoadRow } from "../loadRow.ts";
import type { RunRow } from "../runRow.ts";
import type { TargetRow } from "../targetRow.ts";
import { airNeededBook } from "./airNeeded.ts";
import { alteredName, alteredStem } from "./alteredColumn.ts";
import { changeEffect, onBothSides, rowsInWindow, type SidedRow } from "./changeEffect.ts";
import { changeWarnings } from "./changeWarnings.ts";
import { beginningOf, changeWindow } from "./changeWindow.ts";
import { type ComparedGround, type ComparedRow, comparedRows } from "./comparedRow.ts";
import { type PlaceboBook, placeboBook } from "./placeboBook.ts";
import { type DatedRow, datedRows } from "./standsAt.ts";
import { onlyReads, touchedBy, touchTheSame } from "./touchedMeasures.ts";
import { trialPlans } from "./trialPlans.ts";

export interface ChangesOptions {
  readonly events: readonly EventRow[];
  /** Moisture samples by run. */
  readonly samples: ReadonlyMap<string, readonly number[]>;
  readonly targets: readonly TargetRow[];
  /** Runs left out by hand. */
  readonly without: ReadonlySet<string>;
  /** What Kiln hours says of the same rows: the air it uses, and which of its models is the better. */
  readonly kilnHours: Pick<KilnHoursResult, "airBasis" | "kilnHours">;
  readonly targetMoisturePercent: number;
  readonly pressurePascals: number;
  readonly timeZone: string;
}

/** Did each logged change help? Over the rows shown, latest change first, and what the next trial would take. */
export function analyseChanges(
  runs: readonly RunRow[],
  loads: readonly LoadRow[],
  options: ChangesOptions,
): ChangesResult {
  const desk = comparisonDesk(runs, loads, options);
  const changes = [...idsOfChanges(options.events)];
  return {
    changes: changes.map(([change, id]) => judgeChange(change, id, desk)).reverse(),
    plans: trialPlans(desk.rowsOf, desk.placebos),
    tooLittle:
      changes.length === 0
        ? "No change is logged in events.csv: write down what was changed, and from which day, and this page says whether it helped."
        : null,
  };
}

/** What these events came to, be they changes, repairs or calibrations, over the rows given; in their order. */
export function judgeEvents(
  judged: readonly EventRow[],
  runs: readonly RunRow[],
  loads: readonly LoadRow[],
  options: ChangesOptions,
): readonly ChangeResult[] {
  if (judged.length === 0) return [];
  const desk = comparisonDesk(runs, loads, options);
  return judged.map((event) => judgeChange(event, "", desk));
}

/** The logged changes in their order, each with its name in an address: `change-2026-05-18`, `change-2026-05-18-2` for a second of that day. */
export function idsOfChanges(events: readonly EventRow[]): ReadonlyMap<EventRow, string> {
  const counts = new Map<number, number>();
  return new Map(
    events
      .filter(({ kind }) => kind === "change")
      .map((change) => {
        const count = (counts.get(change.on) ?? 0) + 1;
        counts.set(change.on, count);
        return [change, `change-${printIsoDate(change.on, "UTC")}${count > 1 ? `-${count}` : ""}`];
      }),
  );
}

function comparisonDesk(runs: readonly RunRow[], loads: readonly LoadRow[], options: ChangesOptions): ComparisonDesk {
  const { events, samples, targets, without, kilnHours, targetMoisturePercent, pressurePascals, timeZone } = options;
  const filling = usualFilling(loads, targetMoisturePercent, pressurePascals);
  const ground: ComparedGround = {
    runs,
    loads,
    samples,
    targets,
    without,
    airBasis: kilnHours.airBasis,
    filling,
    airNeeded: airNeededBook(loads, filling, kilnHours.kilnHours.best === "drying-air"),
    timeZone,
  };
  const known = new Map<ChangedMeasure, readonly ComparedRow[]>();
  const rowsOf = (measure: ChangedMeasure): readonly ComparedRow[] => {
    const found = known.get(measure) ?? comparedRows(measure, ground);
    known.set(measure, found);
    return found;
  };
  const dated = new Map<string, readonly DatedRow[]>();
  const datedOf = (measure: ChangedMeasure, scope: string): readonly DatedRow[] => {
    const found = dated.get(`${measure} ${scope}`) ?? datedRows(rowsOf(measure), scope, measure);
    dated.set(`${measure} ${scope}`, found);
    return found;
  };
  return { events, rowsOf, datedOf, ground, placebos: placeboBook(rowsOf, events, ground) };
}

/** What all comparisons of one report share, each part worked out once. */
interface ComparisonDesk {
  readonly events: readonly EventRow[];
  readonly rowsOf: (measure: ChangedMeasure) => readonly ComparedRow[];
  readonly datedOf: (measure: ChangedMeasure, scope: string) => readonly DatedRow[];
  readonly ground: ComparedGround;
  readonly placebos: PlaceboBook;
}

function judgeChange(
  change: EventRow,
  id: string,
  { events, datedOf, ground, placebos }: ComparisonDesk,
): ChangeResult {
  const { timeZone } = ground;
  const stem = alteredStem(change.alters);
  const window = changeWindow(change, events, timeZone);
  const measures = touchedBy(change.scope);
  const effects: ChangeEffect[] = [];
  const lacking: { measure: ChangedMeasure; reason: string }[] = [];
  const oneSided = new Set<string>();
  let most: readonly SidedRow[] = [];
  for (const measure of measures) {
    const inWindow = rowsInWindow(datedOf(measure, change.scope), window);
    const { kept, oneSided: varieties } = onBothSides(inWindow);
    const effect = changeEffect({ change, measure, window, rows: kept, rowsThereAre: inWindow, ground, placebos });
    if (typeof effect === "string") {
      lacking.push({ measure, reason: effect });
      continue;
    }
    effects.push(effect);
    for (const variety of varieties) oneSided.add(variety);
    if (kept.length > most.length) most = kept;
  }
  return {
    event: change,
    altered: stem === null ? null : alteredName(stem),
    id,
    at: window.at,
    from: window.from,
    to: window.to,
    effects,
    lacking,
    warnings:
      effects.length === 0
        ? []
        : changeWarnings({
            change,
            events,
            window,
            rows: most,
            measures: effects.map(({ measure }) => measure),
            oneSided: [...oneSided].sort(),
            timeZone,
          }),
    beside: events.filter((event) => {
      const begins = beginningOf(event, timeZone);
      const isWithin = begins > window.from && begins < window.to;
      return event !== change && event.kind !== "new-baseline" && isWithin && touchTheSame(event.scope, measures);
    }),
    tooLittle: effects.length > 0 ? null : whyNothing(change, lacking),
  };
}

function whyNothing(
  { scope }: EventRow,
  lacking: readonly { readonly measure: ChangedMeasure; readonly reason: string }[],
): string {
  if (lacking.length === 0) {
    return onlyReads(scope)
      ? `A change to the ${scope} moves what is read and not the malt, so that nothing is compared.`
      : "Nothing that is logged could show this change.";
  }
  return lacking[0]?.reason ?? "";
}
