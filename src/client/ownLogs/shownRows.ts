import type { MatchPreviewState } from "../../bodies/ownLogs/foreignState.ts";
import { lackInWords } from "../../findings/foreignSentences.ts";
import { columnLabel } from "../../tables/columnLabels.ts";
import { draftMatches } from "../../tables/foreign/draft/draftMatches.ts";
import { lacks } from "../../tables/foreign/draft/draftNeeds.ts";
import { partLabel } from "../../tables/foreign/draft/headingChoices.ts";
import type { MatchDraft } from "../../tables/foreign/draft/matchDraft.ts";
import { previewMatch } from "../../tables/foreign/previewMatch.ts";
import type { House } from "../../tables/house.ts";
import { previewTable } from "./previewTable.ts";

/** Rows that are shown of each table. */
const ROWS_SHOWN = 5;

/**
 * The first rows of each part of a draft as they would be read, or what keeps it from that.
 *
 * @param beginning of the file
 */
export async function shownRows(
  draft: MatchDraft,
  beginning: Uint8Array,
  house: House,
): Promise<readonly MatchPreviewState[]> {
  const matches = draftMatches(draft, draft.path);
  const missing = lacks(draft);
  const shown: MatchPreviewState[] = [];
  for (const [index, part] of draft.parts.entries()) {
    const label = partLabel(draft, part);
    const lacking = missing.filter((lack) => lack.part === part).map(({ column }) => columnLabel(part.table, column));
    const match = matches[index];
    if (lacking.length > 0 || match === undefined) {
      shown.push({ label, lack: lackInWords(label, lacking), columns: [], rows: [], counts: "", problems: [] });
      continue;
    }
    const others = matches.filter((other) => other !== match);
    const preview = await previewMatch(draft.path, beginning, match, house, others, ROWS_SHOWN);
    shown.push(previewTable(label, part.table, preview, house));
  }
  return shown;
}
