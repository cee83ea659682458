import {
  type ForeignHands,
  type ForeignState,
  foreignFileId,
  type MatchPreviewState,
} from "../../bodies/ownLogs/foreignState.ts";
import { holdsNothing } from "../../findings/foreignSentences.ts";
import { tableLabel } from "../../tables/columnLabels.ts";
import { draftMatches } from "../../tables/foreign/draft/draftMatches.ts";
import { lacks } from "../../tables/foreign/draft/draftNeeds.ts";
import { draftOf } from "../../tables/foreign/draft/draftOf.ts";
import type { MatchDraft } from "../../tables/foreign/draft/matchDraft.ts";
import { type ForeignMatch, MATCH_FILE } from "../../tables/foreign/foreignMatch.ts";
import { joinMatches } from "../../tables/foreign/joinMatches.ts";
import { layoutAsSaid } from "../../tables/foreign/sampleLayout.ts";
import type { House } from "../../tables/house.ts";
import { readHouse } from "../../tables/readHouse.ts";
import type { ChosenFile } from "./chosenFile.ts";
import { draftHands } from "./draftHands.ts";
import { type LookedOver, lookOver } from "./lookOver.ts";
import { alike, type Entry, goBack, newEntry, remember, turnDoubtful } from "./matchedEntry.ts";
import { matchState } from "./matchState.ts";
import { shownRows } from "./shownRows.ts";

/** Where files with headings of their own are matched, column by column, before they are read. */
export interface ForeignDesk {
  readonly state: ForeignState;
  /** Other files were chosen. @throws {RefusedLogs} on an archive that cannot be opened */
  look(chosen: readonly ChosenFile[]): Promise<void>;
  /** The house's settings were changed: what is shown of the rows follows. */
  settingsChanged(): void;
  /** The files to be read: those that were chosen, with a columns.toml that holds what was matched. */
  withMatches(chosen: readonly ChosenFile[]): readonly ChosenFile[];
}

interface ForeignDeskHost {
  /** What the page says has changed; done once it is drawn. */
  changed(): Promise<void>;
  /** Text of a house.toml for files that bring none, as the page's fields have it. */
  house(): string;
  /** The page turns to this place, by its id. */
  turnTo(id: string): void;
  save(text: string): void;
}

export function openForeignDesk({ changed, house, turnTo, save }: ForeignDeskHost): ForeignDesk {
  let looked: LookedOver | null = null;
  let entries = new Map<string, Entry>();
  let matching: string | null = null;
  let previews: readonly MatchPreviewState[] = [];
  let refusal: string | null = null;
  /** All that was ever said of chosen files, by pattern. */
  const remembered = new Map<string, Entry>();
  let looks = 0;
  let wish = 0;
  /** Where the page turns once it is drawn, by whichever wish is drawn. */
  let turnsTo: string | null = null;

  /** Files that were said to be read otherwise than the chosen columns.toml has it, if it speaks of them at all. */
  const changedOnes = (): readonly Entry[] => [...entries.values()].filter(({ taken, given }) => taken !== given);
  const taken = (): readonly ForeignMatch[] =>
    changedOnes().flatMap((entry) => (entry.taken ? draftMatches(entry.taken, entry.strangers.pattern) : []));
  const tablesOf = (draft: MatchDraft | null): readonly string[] => [
    ...new Set(draft?.parts.map(({ table }) => tableLabel(table))),
  ];
  const settings = (): House => readHouse(looked?.house ?? house()).house;
  const joined = () =>
    joinMatches(looked?.matches ?? null, taken(), new Set(changedOnes().map(({ strangers }) => strangers.pattern)));

  /** Works out what is shown of the file that is being matched, then draws. Only the latest wish is drawn. */
  const redraw = async (): Promise<void> => {
    wish += 1;
    const mine = wish;
    const entry = entries.get(matching ?? "");
    const found = entry?.draft ? await shownRows(entry.draft, entry.strangers.beginning.bytes, settings()) : [];
    if (mine !== wish) return;
    previews = found;
    await changed();
    if (mine !== wish || turnsTo === null) return;
    turnTo(turnsTo);
    turnsTo = null;
  };

  /** Where the list says what becomes of a file. */
  const listed = (key: string): string => foreignFileId([...entries.keys()].indexOf(key));

  const redrawAt = (id: string): void => {
    turnsTo = id;
    void redraw();
  };

  const edit = (next: (draft: MatchDraft, own: House) => MatchDraft, field: string | null = null): void => {
    const entry = entries.get(matching ?? "");
    if (!entry?.draft) return;
    remember(entry, field);
    entry.draft = next(entry.draft, settings());
    refusal = null;
    turnDoubtful(entry);
    void redraw();
  };

  /** Something is decided of a file, which is then matched no longer. */
  const settle = (key: string, decide: (entry: Entry) => void): void => {
    const entry = entries.get(key);
    if (entry === undefined) return;
    decide(entry);
    if (matching === key) matching = null;
    redrawAt(listed(key));
  };

  const hands: ForeignHands = {
    match(key) {
      const entry = entries.get(key);
      if (entry === undefined) return;
      const { strangers } = entry;
      entry.draft ??= draftOf(strangers.paths[0] ?? "", strangers.sample, strangers.beginning.encoding, settings());
      turnDoubtful(entry);
      matching = key;
      refusal = null;
      redrawAt("match-title");
    },
    leaveOut: (key) => settle(key, (entry) => Object.assign(entry, { taken: null, isLeftOut: true })),
    undo: (key) => settle(key, (entry) => Object.assign(entry, { taken: entry.given })),
    leave: (key) =>
      settle(key, (entry) => {
        if (entry.draft !== entry.taken) remember(entry, null);
        entry.draft = entry.taken;
      }),
    back() {
      const entry = entries.get(matching ?? "");
      if (entry === undefined || !goBack(entry)) return;
      refusal = null;
      void redraw();
    },
    take() {
      const entry = entries.get(matching ?? "");
      if (!entry?.draft) return;
      const missing = lacks(entry.draft);
      const lacking = previews.find(({ lack }) => lack !== null)?.lack;
      refusal = entry.draft.parts.length === 0 ? holdsNothing : missing.length > 0 ? (lacking ?? holdsNothing) : null;
      if (refusal !== null) {
        void changed();
        return;
      }
      settle(entry.strangers.pattern, (one) => Object.assign(one, { taken: one.draft, isLeftOut: false }));
    },
    save: () => save(joined().text),
    layOut(delimiter, headingsLine, linesUnder) {
      const entry = entries.get(matching ?? "");
      if (entry === undefined) return;
      const { beginning, paths } = entry.strangers;
      const sample = layoutAsSaid(beginning.text, delimiter, headingsLine, linesUnder);
      refusal = sample === null ? `Nothing stands in line ${headingsLine}.` : null;
      if (sample !== null) {
        remember(entry, null);
        entry.draft = draftOf(paths[0] ?? "", sample, beginning.encoding, settings());
        entry.turned = new Set();
        turnDoubtful(entry);
      }
      void redraw();
    },
    ...draftHands(edit),
    turn(place) {
      const turned = entries.get(matching ?? "")?.turned;
      if (turned && !turned.delete(place)) turned.add(place);
      void changed();
    },
  };

  return {
    get state(): ForeignState {
      const entry = entries.get(matching ?? "");
      return {
        files: [...entries].map(([key, { strangers, taken: read, given, isLeftOut }]) => ({
          key,
          paths: strangers.paths,
          headings: strangers.sample.headings,
          status: read ? "taken" : strangers.matches.length > 0 ? "beyond" : isLeftOut ? "left-out" : "open",
          isNews: read !== given,
          tables: tablesOf(read),
        })),
        matching:
          entry?.draft && matching !== null
            ? matchState(
                {
                  key: matching,
                  paths: entry.strangers.paths,
                  draft: entry.draft,
                  isTaken: entry.taken !== null,
                  isGiven: entry.given !== null,
                  canGoBack: entry.before.length > 0,
                  turned: entry.turned,
                  previews,
                  said: refusal,
                },
                settings(),
              )
            : null,
        losesOlder: changedOnes().length > 0 && !joined().keepsOlder,
        hands,
      };
    },
    async look(chosen) {
      looks += 1;
      const mine = looks;
      const found = await lookOver(chosen);
      if (mine !== looks) return;
      looked = found;
      // What was said of files that are gone comes back with them: they may have been put away by mistake.
      for (const [key, entry] of entries) remembered.set(key, entry);
      const own = settings();
      entries = new Map(
        found.strangers.map((strangers): readonly [string, Entry] => {
          const known = remembered.get(strangers.pattern);
          const entry = known && alike(known.strangers, strangers) ? known : newEntry(strangers, own);
          entry.strangers = strangers;
          return [strangers.pattern, entry];
        }),
      );
      if (!entries.has(matching ?? "")) matching = null;
      await redraw();
    },
    settingsChanged() {
      if (matching !== null) void redraw();
    },
    withMatches(chosen) {
      if (looked === null || changedOnes().length === 0) return chosen;
      const blob = new Blob([joined().text], { type: "text/plain" });
      return [...chosen, { path: `${looked.root}${MATCH_FILE}`, blob }];
    },
  };
}
