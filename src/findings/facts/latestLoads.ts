import type { LoadRow } from "../../report/loadRow.ts";
import { LATEST_RUNS } from "./factFrame.ts";

const isDone = (load: LoadRow): load is LoadRow & { readonly unloadedAt: number } => load.unloadedAt !== null;

/** The loads done by the end of a month; and of them the month's own, or the latest where it has few; earliest first. */
export function latestLoads(
  loads: readonly LoadRow[],
  { from, before }: { readonly from: number; readonly before: number },
) {
  const done = loads.filter(isDone).filter(({ unloadedAt }) => unloadedAt < before);
  const inMonth = done.filter(({ unloadedAt }) => unloadedAt >= from).length;
  return { done, latest: inMonth === 0 ? [] : done.slice(-Math.max(LATEST_RUNS, inMonth)) };
}
