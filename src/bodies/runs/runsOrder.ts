import type { RunRow } from "../../report/runRow.ts";

/** What the runs table can be sorted by: the name in the address, and where the value stands. */
export const SORT_KEYS = {
  run: (row: RunRow) => row.run,
  loaded: (row: RunRow) => row.loadedAt ?? row.steepStartedAt,
  variety: (row: RunRow) => row.variety,
  lot: (row: RunRow) => row.lot,
  grain: (row: RunRow) => row.grainInKilograms,
  depth: (row: RunRow) => row.bedDepthMetres,
  hours: (row: RunRow) => row.kilnHours,
  moisture: (row: RunRow) => row.finalMoisturePercent,
  yield: (row: RunRow) => row.dryMatterYieldPercent,
} as const satisfies Record<string, (row: RunRow) => string | number | null>;

export type SortKey = keyof typeof SORT_KEYS;

/** A sort as the address says it: `hours`, or `-hours` for the largest first. */
export interface Sort {
  readonly key: SortKey;
  readonly descending: boolean;
}

/** Null for a text that names no column. */
export function readSort(text: string | null): Sort | null {
  if (text === null) return null;
  const descending = text.startsWith("-");
  const key = descending ? text.slice(1) : text;
  return Object.hasOwn(SORT_KEYS, key) ? { key: key as SortKey, descending } : null;
}

/** The sort that a click on a heading asks for: upwards first, then downwards. */
export function nextSort(now: Sort | null, key: SortKey): string {
  return now?.key === key && !now.descending ? `-${key}` : key;
}

/** Text by code point, numbers by size; what was not recorded comes last either way. */
function compare(a: string | number | null, b: string | number | null, descending: boolean): number {
  if (a === null || b === null) return a === b ? 0 : a === null ? 1 : -1;
  const order = a < b ? -1 : a > b ? 1 : 0;
  return descending ? -order : order;
}

/**
 * By the day into the kiln, latest first, and before them what was steeped since the last load and no kiln has had yet: whatever
 * hour a batch went into steep, one in steep or on the floor never stands below one in the kiln.
 */
function latestFirst(rows: readonly RunRow[]): readonly RunRow[] {
  const lastIn = rows.find(({ loadedAt }) => loadedAt !== null)?.steepStartedAt ?? null;
  const isUnderWay = ({ loadedAt, steepStartedAt }: RunRow): boolean =>
    loadedAt === null && lastIn !== null && steepStartedAt !== null && steepStartedAt > lastIn;
  return [...rows.filter(isUnderWay), ...rows.filter((row) => !isUnderWay(row))];
}

/** Rows in the order asked for; equal ones keep theirs. Without a sort the latest stand first. */
export function sortRuns(rows: readonly RunRow[], sort: Sort | null): readonly RunRow[] {
  if (sort === null) return latestFirst(rows);
  const value = SORT_KEYS[sort.key];
  return rows.toSorted((a, b) => compare(value(a), value(b), sort.descending));
}

/** Rows in which every word of `search` stands somewhere: in the number, variety, lot, grower, bag code or notes. */
export function searchRuns(rows: readonly RunRow[], search: string | null): readonly RunRow[] {
  const words = (search ?? "")
    .toLowerCase()
    .split(/\s+/)
    .filter((word) => word !== "");
  if (words.length === 0) return rows;
  return rows.filter((row) => {
    const text = [row.run, row.variety, row.grain, row.lots ?? row.lot, row.grower, row.kiln, row.bagCode, row.notes]
      .join(" ")
      .toLowerCase();
    return words.every((word) => text.includes(word));
  });
}
