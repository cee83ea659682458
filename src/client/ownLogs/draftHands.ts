import type { ForeignHands } from "../../bodies/ownLogs/foreignState.ts";
import type { TableName } from "../../tables/declarations.ts";
import {
  withFixed,
  withoutPart,
  withPart,
  withProbe,
  withUnit,
  withUse,
  withWord,
} from "../../tables/foreign/draft/changeDraft.ts";
import { useOf } from "../../tables/foreign/draft/headingChoices.ts";
import type { MatchDraft } from "../../tables/foreign/draft/matchDraft.ts";
import type { DateOrder, House } from "../../tables/house.ts";

type DraftHands = Pick<
  ForeignHands,
  "addPart" | "dropPart" | "fix" | "dates" | "shortYears" | "decimal" | "use" | "unit" | "word" | "probe"
>;

/** What a reader can say of the file that is being matched, each as a change of its draft. */
export const draftHands = (
  edit: (next: (draft: MatchDraft, house: House) => MatchDraft, field?: string) => void,
): DraftHands => ({
  addPart: (table) => edit((draft, house) => withPart(draft, table as TableName, house)),
  dropPart: (id) => edit((draft) => withoutPart(draft, id)),
  fix: (part, stem, text) => edit((draft) => withFixed(draft, part, stem, text), `${part} ${stem}`),
  dates: (order) => edit((draft) => ({ ...draft, dateOrder: order as DateOrder })),
  shortYears: (shortYears) => edit((draft) => ({ ...draft, shortYears })),
  decimal: (mark) => edit((draft) => ({ ...draft, decimal: mark === "." || mark === "," ? mark : null })),
  use: (place, key) => edit((draft, house) => withUse(draft, place, useOf(key), house)),
  unit: (place, key) => edit((draft) => withUnit(draft, place, key)),
  word: (place, found, meant) => edit((draft) => withWord(draft, place, found, meant)),
  probe: (name, stem, unit) => edit((draft) => withProbe(draft, name, stem === "" ? null : stem, unit)),
});
