import type { HouseBrief } from "../../report/report.ts";
import type { LogFile } from "../../tables/logFile.ts";
import { readHouse } from "../../tables/readHouse.ts";
import { stageCsv } from "../../tables/writeUp/appendRow.ts";
import { checkDraft, type DraftProblems } from "../../tables/writeUp/checkDraft.ts";
import type { Draft } from "../../tables/writeUp/draft.ts";
import { settingsText } from "../../tables/writeUp/logsAtHand.ts";
import type { WriteUpTable } from "../../tables/writeUp/writeUpStages.ts";
import { saveFile } from "../takeAway/saveFile.ts";
import type { LogsFolder, TakeOut } from "./logsFolder.ts";

interface Saving {
  readonly draft: Draft;
  readonly table: WriteUpTable;
  readonly folder: LogsFolder | null;
  readonly house: Pick<HouseBrief, "name" | "timeZone" | "units">;
  /** What the draft is checked with. */
  readonly logs: readonly LogFile[];
}

interface Saved {
  readonly saved: boolean;
  readonly problems: DraftProblems;
  readonly sentence: string | null;
  /** The folder with the row in it. */
  readonly folder: LogsFolder | null;
  /** Takes the row out of that folder's file again; null where it went elsewhere. */
  readonly takeOut: TakeOut | null;
}

/** A name that may stand in a file's. */
const fileName = (run: string): string => run.replaceAll(/[^\p{L}\p{N}._-]+/gu, "-");

/**
 * Puts a finished stage where it belongs: behind its log in the chosen folder, else into a file of its own. What the rules
 * refuse is not saved; a note is no refusal.
 */
export async function saveStage({ draft, table, folder, house, logs }: Saving): Promise<Saved> {
  const problems = await checkDraft(draft, logs, Date.now());
  const refused = { saved: false, problems, folder: null, takeOut: null };
  if ((problems[table] ?? []).some(({ effect }) => effect !== "note")) return { ...refused, sentence: null };
  const typed = draft.stages[table] ?? {};
  try {
    if (folder === null) {
      const { house: settings } = readHouse(settingsText(house));
      const name = `${table}-${fileName(draft.run)}.csv`;
      saveFile(name, "text/csv;charset=utf-8", stageCsv(table, draft.run, typed, settings));
      const sentence = `Downloaded ${name}: put its second line behind ${table}.csv.`;
      return { saved: true, problems, folder: null, takeOut: null, sentence };
    }
    const takeOut = await folder.add(table, draft.run, typed);
    const sentence = `Added to ${table}.csv in ${folder.name}.`;
    return { saved: true, problems, folder: await folder.again(), takeOut, sentence };
  } catch (error) {
    const why = error instanceof Error ? error.message : String(error);
    return { ...refused, sentence: `Not saved. ${why}` };
  }
}
