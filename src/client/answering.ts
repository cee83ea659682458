import { viewRows } from "../report/chosenRows.ts";
import type { PackedReport } from "../report/packed.ts";
import type { PartName, ReportParts, ReportRows } from "../report/report.ts";
import { unpackReport } from "../report/unpackReport.ts";
import { choosesRows, formatView, type View, wholeView } from "../report/view.ts";
import type { BuiltPieces } from "./builtPieces.ts";
import { frameShown } from "./frameShown.ts";
import { awaitsLater, isWorthDrawing, withLater } from "./laterFindings.ts";
import { latestKept } from "./latestKept.ts";
import { likelyViews } from "./likelyViews.ts";
import { holds, type LoadedReport } from "./loadedReport.ts";
import type { Foreseen, ReportWorker } from "./workerCalls.ts";

/** Each holds some megabytes; a reader goes back to the last few. */
const MOST_KEPT = 6;
/** Answers to what was only likely to be asked. */
const MOST_FORESEEN = 14;

/** The rows and the fit that a view chooses, as a key: units, sorting and what-if do not change them. */
function rowsKey(view: View): string {
  const { from, to, variety, kiln, without, air, rules, month } = view;
  return formatView({ ...wholeView, from, to, variety, kiln, without, air, rules, month });
}

/**
 * The report of a view with the parts that a page needs; where something takes longer, first without and then again with it.
 *
 * @throws {Error} with a plain message when the files or the engine cannot be had
 */
export type Answers = (view: View, parts: readonly PartName[]) => AsyncGenerator<LoadedReport, void>;

/** Where the answers come from. */
interface Ground {
  readonly worker: Pick<ReportWorker, "ask" | "foresee" | "isReady">;
  /** Rows of the view that chooses all. */
  whole(): Promise<ReportRows>;
  /** What needs no worker: the report as it was built. */
  readonly built: BuiltPieces | null;
}

/** An answer that nobody has asked for yet, with these parts. */
interface Guess extends Pick<Foreseen, "chosen"> {
  readonly parts: readonly PartName[];
  readonly packed: PackedReport;
}

const unpacked = (packed: PackedReport): Partial<ReportParts> => unpackReport<Partial<ReportParts>>(packed);

/** Answers views, keeps the last answers, and has the likely next ones made while nobody waits. */
export function answering({ worker, whole, built }: Ground): Answers {
  // The same object for as long as nothing is added to it, so that what was drawn from it need not be drawn again.
  const kept = latestKept<LoadedReport>(MOST_KEPT);
  // Packed as they come: most are never asked for, and thousands of rows as objects would be in the collector's way.
  const foreseen = latestKept<Guess>(MOST_FORESEEN);
  let questions = 0;

  /** The guess that holds these parts; null where there is none. */
  const guessed = (key: string, parts: readonly PartName[]): Guess | null => {
    const guess = foreseen.get(key) ?? null;
    return guess !== null && parts.every((part) => guess.parts.includes(part)) ? guess : null;
  };

  /** The answer where it is made already, by an earlier question or as a guess; null where these parts are not. */
  const made = async (key: string, parts: readonly PartName[]): Promise<LoadedReport | null> => {
    const shown = kept.get(key);
    if (shown !== undefined && holds(shown, parts)) return shown;
    const guess = guessed(key, parts);
    return guess === null ? null : { ...(shown ?? viewRows(await whole(), guess.chosen)), ...unpacked(guess.packed) };
  };

  const isMade = (key: string, parts: readonly PartName[]): boolean => {
    const shown = kept.get(key);
    return (shown !== undefined && holds(shown, parts)) || guessed(key, parts) !== null;
  };

  const lookAhead = async (view: View, report: LoadedReport, parts: readonly PartName[]): Promise<void> => {
    const mine = questions;
    const isNew = (one: View): boolean => !isMade(rowsKey(one), parts) && (built === null || choosesRows(one));
    const views = likelyViews(view, report, parts).filter(isNew);
    if (!worker.isReady || views.length === 0) return;
    await frameShown();
    // Whatever was asked meanwhile must not give way to a guess.
    if (mine !== questions) return;
    worker.foresee(views, parts, ({ view: one, chosen, parts: packed }) =>
      foreseen.keep(rowsKey(one), { parts, chosen, packed }),
    );
  };

  return async function* of(view, parts) {
    questions += 1;
    if (built !== null && !choosesRows(view)) {
      const report = await built.with(parts);
      yield report;
      void lookAhead(view, report, parts);
      return;
    }
    const key = rowsKey(view);
    let found = await made(key, parts);
    if (found !== null) yield kept.keep(key, found);
    if (found === null || awaitsLater(found, parts)) {
      const answer = worker.ask(view, parts);
      const [all, { chosen, parts: packed }] = await Promise.all([whole(), answer.report]);
      if (found === null) {
        found = kept.keep(key, { ...(kept.get(key) ?? viewRows(all, chosen)), ...unpacked(packed) });
        yield found;
      }
      // By now it has been drawn.
      void frameShown().then(answer.seen);
      if (awaitsLater(found, parts)) {
        const later = await answer.later;
        found = kept.keep(key, withLater(found, later));
        if (isWorthDrawing(later)) yield found;
      }
    }
    void lookAhead(view, found, parts);
  };
}
