import { counted } from "../counted.ts";

/** So many batches are named beside a finding. */
const MOST_NAMED = 4;
/** Where there are more they are counted, and so many of the latest are named. */
const LATEST_NAMED = 3;

/** Which batches of a finding are named, and the words that go before their names. */
export function namedOf(
  runs: readonly string[],
  runCount: number,
): { readonly words: string; readonly runs: readonly string[] } {
  if (runCount === 1) return { words: "batch", runs };
  if (runCount <= MOST_NAMED) return { words: "batches", runs };
  return { words: `${counted(runCount, "batch", "batches")}, the latest`, runs: runs.slice(-LATEST_NAMED) };
}
