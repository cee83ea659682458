import type { Problem } from "./problem.ts";

/** Problems of one kind in one file that are listed one by one; the rest are counted, with their lines, in one more. */
const LISTED_OF_A_KIND = 100;
const SHOWN_RANGES = 30;

export interface FileCounts {
  rowsSetAside: number;
  valuesBlanked: number;
  notes: number;
}

interface Kind {
  listed: number;
  /** Beyond the listed: lines as ranges, so that no row is lost without its line being named. */
  readonly ranges: [number, number][];
  more: number;
  readonly runs: Set<string>;
  readonly first: Problem;
}

function said(ranges: readonly [number, number][]): string {
  const parts = ranges.slice(0, SHOWN_RANGES).map(([from, to]) => (from === to ? `${from}` : `${from} to ${to}`));
  const rest = ranges.slice(SHOWN_RANGES);
  if (rest.length === 0) return parts.join(", ");
  return `${parts.join(", ")} and ${rest.length} more stretches up to line ${(rest.at(-1) as [number, number])[1]}`;
}

/** Collects every Problem while logs are read, counts them by file, and keeps lists that no one could read short. */
export class ProblemLog {
  private kept: Problem[] = [];
  private readonly kinds = new Map<string, Kind>();
  private readonly files = new Map<string, FileCounts>();

  /** Counts of one file; rows set aside are counted by whoever sets them aside, since a row may have several faults. */
  countsOf(file: string): FileCounts {
    const known = this.files.get(file);
    if (known) return known;
    const made = { rowsSetAside: 0, valuesBlanked: 0, notes: 0 };
    this.files.set(file, made);
    return made;
  }

  /** Takes back what was said of a file, when it turns out that the file as a whole cannot be read. */
  forget(file: string): void {
    this.files.delete(file);
    this.kept = this.kept.filter((problem) => problem.file !== file);
    for (const [key, kind] of this.kinds) if (kind.first.file === file) this.kinds.delete(key);
  }

  /** @param values how many values a problem blanks, where it stands for a whole column */
  add(problem: Problem, values = 1): void {
    const counts = this.countsOf(problem.file);
    if (problem.effect === "value-blanked") counts.valuesBlanked += values;
    if (problem.effect === "note") counts.notes += 1;
    const key = JSON.stringify([problem.file, problem.rule, problem.column, problem.effect]);
    let kind = this.kinds.get(key);
    if (!kind) {
      kind = { listed: 0, ranges: [], more: 0, runs: new Set(), first: problem };
      this.kinds.set(key, kind);
    }
    if (kind.listed < LISTED_OF_A_KIND) {
      kind.listed += 1;
      this.kept.push(problem);
      return;
    }
    kind.more += 1;
    if (problem.run !== null) kind.runs.add(problem.run);
    if (problem.line === null) return;
    const open = kind.ranges.at(-1);
    if (open && problem.line >= open[0] && problem.line <= open[1] + 1) open[1] = Math.max(open[1], problem.line);
    else kind.ranges.push([problem.line, problem.line]);
  }

  /** Every problem, by file and line; each kind that was cut short ends with one that says how many more there are, and where. */
  list(): readonly Problem[] {
    const all = [...this.kept];
    for (const { more, ranges, runs, first } of this.kinds.values()) {
      if (more === 0) continue;
      all.push({
        ...first,
        line: ranges[0]?.[0] ?? null,
        value: null,
        run: null,
        ...(runs.size === 0 ? {} : { runs: [...runs] }),
        message: `${more} more of the same${ranges.length > 0 ? `, on lines ${said(ranges)}` : ""}. The first: ${first.message}`,
      });
    }
    return all
      .map((problem, index) => ({ problem, index }))
      .sort(
        (a, b) =>
          (a.problem.file < b.problem.file ? -1 : a.problem.file > b.problem.file ? 1 : 0) ||
          (a.problem.line ?? 0) - (b.problem.line ?? 0) ||
          a.index - b.index,
      )
      .map(({ problem }) => problem);
  }
}

/** The text of a value as a Problem quotes it: at most 80 characters. */
export function quotedValue(text: string): string {
  return text.length <= 80 ? text : `${text.slice(0, 79)}…`;
}
