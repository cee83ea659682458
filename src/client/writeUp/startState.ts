import type { WriteUpState } from "../../bodies/writeUp/writeUpState.ts";
import type { ReportRows } from "../../report/report.ts";
import { emptyDraft } from "../../tables/writeUp/draft.ts";
import { writeUpFields } from "../../tables/writeUp/writeUpStages.ts";

/** Names offered while typing; the latest are the likeliest. */
const MOST_OFFERED = 40;

const distinct = (names: readonly (string | null)[]): readonly string[] =>
  [...new Set(names.filter((name) => name !== null))].slice(0, MOST_OFFERED);

/** The page as it is before anything was typed: what the build draws. */
export function startState({ house, runs, choices }: ReportRows): WriteUpState {
  return {
    draft: emptyDraft(""),
    table: "steeping",
    fields: writeUpFields("steeping", house.units),
    problems: [],
    tried: false,
    others: [],
    known: { lot: distinct(runs.map(({ lot }) => lot)), kiln: choices.kilns },
    runs: distinct(runs.map(({ run }) => run)),
    folder: null,
    keptFolder: null,
    opensFolders: false,
    said: null,
    undo: null,
  };
}
