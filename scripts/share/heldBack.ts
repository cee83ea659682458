import { placeInFile, type SharingSources } from "../../src/report/sharing/sharingSources.ts";
import { standingOf } from "../../src/shared/againstSpec.ts";
import { isSharedMeasure, MAY_PASS, mayPass, passLimits, SHARED_LAB_MEASURES } from "../../src/shared/projection.ts";
import type { TableName } from "../../src/tables/declarations.ts";
import { tableOfFile } from "../../src/tables/fileOf.ts";
import { MATCH_FILE } from "../../src/tables/foreign/foreignMatch.ts";
import { fileNames, insideName } from "../../src/tables/insideName.ts";
import type { Problem } from "../../src/tables/problem.ts";
import { declarationOf } from "../../src/tables/tableDeclarations.ts";
import { maltMeasure, printMeasure } from "../../src/units/maltMeasure.ts";

const isShared = (table: TableName | null): table is TableName => table !== null && table in MAY_PASS;

/** Settings that stop every page where they cannot be read. */
const SETTINGS: ReadonlySet<string> = new Set(["house.toml", MATCH_FILE]);

/**
 * Whether a file's faults may reach a customer's page. Of a file that columns.toml reads nobody can say by its name what it holds:
 * it is taken for one that does.
 */
function mayBeShown(file: string): boolean {
  const table = tableOfFile(file);
  return table === null ? !SETTINGS.has(file) : isShared(table);
}

/** The name inside of a column as a file writes it; null where it has a heading of its own, which columns.toml reads. */
function insideOf(table: TableName, written: string): string | null {
  const lower = written.toLowerCase();
  const column = declarationOf(table).columns.find((candidate) =>
    fileNames(candidate).some(({ name }) => name === lower),
  );
  return column === undefined ? null : insideName(column);
}

/** Columns that no page shows and that lead to what it does: without its lot, a batch has no grain. */
const LEADING: Partial<Record<TableName, readonly string[]>> = { steeping: ["lot"] };

/** Whether a problem touches anything that a customer's page would show. */
function touchesShown({ file, column, effect }: Problem, sources: SharingSources): boolean {
  const table = tableOfFile(file);
  if (!mayBeShown(file)) return false;
  if (column === null || effect === "row-set-aside") return true;
  const inside = isShared(table) ? insideOf(table, column) : null;
  if (inside === null || !isShared(table)) return effect !== "note";
  return mayPass(table, inside, sources.house) || (LEADING[table]?.includes(inside) ?? false);
}

/** The runs that a problem concerns: those it names, those made of the lot it stands at, those its target is for. */
function runsOf({ file, line, run, runs }: Problem, sources: SharingSources): readonly string[] {
  if (run !== null) return [run];
  if (runs !== undefined) return runs;
  if (line === null) return [];
  const lot = sources.lotAt.get(placeInFile(file, line));
  const target = sources.targetAt.get(placeInFile(file, line));
  return sources.runs
    .filter(
      ({ lots, lot: first, variety, grain }) =>
        (lot !== undefined && (first === lot || (lots ?? "").split(", ").includes(lot))) ||
        (target !== undefined && isSharedMeasure(target.measure) && ["any", variety, grain].includes(target.variety)),
    )
    .map((row) => row.run);
}

function outsideSpec(run: string, sources: SharingSources): readonly string[] {
  const row = sources.runs.find((candidate) => candidate.run === run);
  if (row === undefined) return [];
  const tested = [
    { measure: "final_moisture_pct", value: row.finalMoisturePercent },
    ...sources.certificates
      .filter((certificate) => certificate.run === run)
      .flatMap(({ values }) => SHARED_LAB_MEASURES.map((measure) => ({ measure, value: values[measure] ?? null }))),
  ];
  return tested.flatMap(({ measure, value }) => {
    if (value === null) return [];
    const standing = standingOf(value, passLimits(sources.targets, measure, row) ?? undefined);
    if (standing !== "below" && standing !== "above") return [];
    const found = maltMeasure(measure);
    return [`${found.words} of ${printMeasure(found, value, sources.house.units)} is ${standing} its spec`];
  });
}

/**
 * Why a batch should not be put before a customer as it stands, by run: problems in the logs that touch what would be
 * shown, and figures outside the spec. Runs without a reason are absent.
 */
export function heldBackReasons(sources: SharingSources): ReadonlyMap<string, readonly string[]> {
  const reasons = new Map<string, string[]>();
  const add = (run: string, reason: string): void => {
    const held = reasons.get(run) ?? [];
    if (!held.includes(reason)) held.push(reason);
    reasons.set(run, held);
  };
  for (const problem of sources.problems) {
    if (!touchesShown(problem, sources)) continue;
    const where = [problem.file, problem.line === null ? null : `line ${problem.line}`, problem.column];
    const reason = `${where.filter((part) => part !== null).join(", ")}: ${problem.message.replace(/\.$/, "")}`;
    for (const run of runsOf(problem, sources)) add(run, reason);
  }
  const sharing = new Set(sources.customers.filter(({ share }) => share).map(({ customer }) => customer));
  for (const { run } of sources.deliveries.filter(({ customer }) => sharing.has(customer))) {
    for (const reason of outsideSpec(run, sources)) add(run, reason);
  }
  return reasons;
}

/**
 * What stops a share as a whole: a file that pages are made from could not be read at all, so that what it holds would be
 * missing from all of them without a word.
 */
export function stopsSharing(problems: readonly Problem[]): readonly string[] {
  return problems
    .filter(({ file, effect }) => effect === "file-set-aside" && (SETTINGS.has(file) || mayBeShown(file)))
    .map(({ file, message }) => `${file}: ${message}`);
}

/** Rows of the trade's tables that were set aside and name no batch: a delivery or a customer may be missing from the pages. */
export function rowsLost(problems: readonly Problem[]): readonly string[] {
  return problems
    .filter(({ file, effect, run }) => effect === "row-set-aside" && run === null && mayBeShown(file))
    .map(({ file, line, message }) => `${file}, line ${line ?? "?"}: ${message}`);
}
