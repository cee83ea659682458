import { keptRecord } from "../keptRecord.ts";
import type { ChosenFile } from "./chosenFile.ts";
import { KEPT_MARK } from "./keptMark.ts";

// The reader's own logs in this browser's own store, only where they asked for it: the files as they were chosen, so that a
// later version of the site reads them by its own rules.

/** What is needed to read the logs again. */
export interface KeptLogs {
  readonly files: readonly ChosenFile[];
  /** Text of a house.toml for logs that bring none. */
  readonly house: string;
}

const record = keptRecord<KeptLogs>("piecebook-own-logs");

/**
 * Keeps these logs and no others.
 *
 * @throws {Error} where the browser has no room for them, or keeps nothing
 */
export async function keepLogs(logs: KeptLogs): Promise<void> {
  await record.put(logs);
  localStorage.setItem(KEPT_MARK, "yes");
}

/** Takes them out of the browser. */
export async function forgetLogs(): Promise<void> {
  localStorage.removeItem(KEPT_MARK);
  await record.forget();
}

/** The logs that are kept; null where there are none. */
export const keptLogs = (): Promise<KeptLogs | null> => record.get();
