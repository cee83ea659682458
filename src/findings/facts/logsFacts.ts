import type { LogsFact } from "../../report/fact.ts";
import type { RunRow } from "../../report/runRow.ts";
import { type FactFrame, namedRuns, noLoss, unloadedOf } from "./factFrame.ts";

/** What most analyses stand on; a batch that lacks one is lost to them. */
const WANTED: readonly (keyof RunRow)[] = [
  "grainInKilograms",
  "maltOutKilograms",
  "finalMoisturePercent",
  "kilnHours",
  "bedDepthMetres",
  "steepOutMoisturePercent",
  "acrospireMean",
  "energyKilowattHours",
];

const countWith = (runs: readonly RunRow[], field: keyof RunRow): number =>
  runs.filter((run) => run[field] !== null).length;

/** Kept in this share of the earlier batches it counts as kept; lacking in half of the month's or more it has stopped. */
const KEPT = 0.8;
const STOPPED = 0.5;
/** Two blanks of four come about by chance where one value in twenty is forgotten; three seldom do. */
const LEAST_LACKING = 3;

/** One value in a month is a slip of the pen, which the page about the logs lists; more of them are a habit. */
const LEAST_BLANKED = 2;

const endOf = ({ unloadedAt, germinationEndedAt }: RunRow): number => unloadedAt ?? germinationEndedAt ?? Number.NaN;

/**
 * Rows set aside, values blanked and columns no longer kept, among the month's batches; those whose kiln row was set aside are
 * among them. What such a row held was logged, so that no column counts as no longer kept for it.
 */
export function logsFacts(frame: FactFrame): readonly LogsFact[] {
  const { monthRuns, lostRuns, report, from } = frame;
  const all = [...monthRuns, ...lostRuns].toSorted((a, b) => endOf(a) - endOf(b));
  const [first, last] = [all[0], all.at(-1)];
  if (first === undefined || last === undefined) return [];
  const names = new Set(all.map(({ run }) => run));
  const mine = report.logs.problems.filter(({ run }) => run !== null && names.has(run));
  // A row that says word for word what another says is set aside, and nothing is lost by it.
  const of = (effect: string): number =>
    mine.filter((problem) => problem.effect === effect && problem.rule !== "repeated-row").length;
  const earlier = report.runs.filter((run) => unloadedOf(run) < from).slice(0, 30);
  const missing = WANTED.filter((field) => {
    const lacking = monthRuns.length - countWith(monthRuns, field);
    const wasKept = earlier.length > 0 && countWith(earlier, field) >= KEPT * earlier.length;
    return wasKept && lacking >= LEAST_LACKING && lacking >= STOPPED * monthRuns.length;
  });
  const rowsSetAside = of("row-set-aside");
  const valuesBlanked = of("value-blanked");
  if (rowsSetAside + missing.length === 0 && valuesBlanked < LEAST_BLANKED) return [];
  const concerned = missing.length > 0 ? all : all.filter(({ run }) => mine.some((p) => p.run === run));
  return [
    {
      kind: "logs",
      rowsSetAside,
      batchesLost: lostRuns.length,
      valuesBlanked,
      missing,
      from: endOf(first),
      to: endOf(last),
      runs: namedRuns(concerned.map(({ run }) => run)),
      runCount: concerned.length,
      chanceReal: 1,
      loss: noLoss,
      beside: [],
    },
  ];
}
