import { useEffect, useMemo, useRef, useState } from "preact/hooks";
import { BodyProvider, useBody } from "../../bodies/context.ts";
import { WriteUp } from "../../bodies/WriteUp.tsx";
import type { WriteUpHands } from "../../bodies/writeUp/writeUpState.ts";
import type { ReportRows } from "../../report/report.ts";
import { checkDraft, type DraftProblems } from "../../tables/writeUp/checkDraft.ts";
import { type Draft, emptyDraft, withoutStage, withTyped } from "../../tables/writeUp/draft.ts";
import { logsAtHand } from "../../tables/writeUp/logsAtHand.ts";
import type { WriteUpTable } from "../../tables/writeUp/writeUpStages.ts";
import { openKeptDrafts } from "./keptDrafts.ts";
import { opensFolders, type TakeOut } from "./logsFolder.ts";
import { saveStage } from "./saveStage.ts";
import { shownFields } from "./shownFields.ts";
import { startState } from "./startState.ts";
import { useLogsFolder } from "./useLogsFolder.ts";

/** After the last key, so that a slow phone checks once and not for every letter. */
const CHECK_AFTER_MILLISECONDS = 250;

/** `2026-03-08T01:30` by the house's clock, as a browser's field has it. */
function nowInZone(timeZone: string): string {
  const parts = new Intl.DateTimeFormat("en-CA", {
    timeZone,
    year: "numeric",
    month: "2-digit",
    day: "2-digit",
    hour: "2-digit",
    minute: "2-digit",
    hourCycle: "h23",
  }).formatToParts(new Date());
  const part = (type: string): string => parts.find((one) => one.type === type)?.value ?? "";
  return `${part("year")}-${part("month")}-${part("day")}T${part("hour")}:${part("minute")}`;
}

/** What went out of the boxes and can come back into them. */
interface Removed {
  readonly draft: Draft;
  /** The stage that was saved; null where the whole draft was removed. */
  readonly saved: WriteUpTable | null;
  readonly takeOut: TakeOut | null;
}

/** The page that writes up a batch, alive: the same body as the built one, with hands. */
export function WriteUpLive({ report, root }: { readonly report: ReportRows; readonly root: string }) {
  const { standing: _, waits: __, ...context } = useBody();
  const kept = useMemo(() => openKeptDrafts(root), [root]);
  const [awake, setAwake] = useState(false);
  const [draft, showDraft] = useState<Draft>(emptyDraft(""));
  // What is typed before the page is drawn again must not be laid over an older draft.
  const latest = useRef(draft);
  const setDraft = (next: Draft): void => {
    latest.current = next;
    showDraft(next);
  };
  const [table, setTable] = useState<WriteUpTable>("steeping");
  const [problems, setProblems] = useState<DraftProblems>({});
  const [tried, setTried] = useState(false);
  const [words, setWords] = useState<string | null>(null);
  const inHand = useLogsFolder(root, setWords);
  const { folder } = inHand;
  const [removed, setRemoved] = useState<Removed | null>(null);
  const [others, setOthers] = useState<readonly string[]>([]);

  const { house, runs } = report;
  const logs = useMemo(
    () => folder?.files ?? logsAtHand(house, runs.find(({ run }) => run === draft.run) ?? null),
    [folder, house, runs, draft.run],
  );

  // Taking the built page over changes nothing of it; the next drawing does, with what was typed before a reload.
  useEffect(() => {
    const [first, ...more] = kept.all();
    if (first !== undefined) {
      latest.current = first;
      showDraft(first);
    }
    setOthers(more.map(({ run }) => run));
    setAwake(true);
  }, [kept]);

  const checking = useRef(0);
  useEffect(() => {
    checking.current += 1;
    const mine = checking.current;
    const clock = setTimeout(() => {
      void checkDraft(draft, logs, Date.now()).then((found) => {
        if (mine === checking.current) setProblems(found);
      });
    }, CHECK_AFTER_MILLISECONDS);
    return () => clearTimeout(clock);
  }, [draft, logs]);

  const keep = (next: Draft): void => {
    setDraft(next);
    const couldKeep = kept.put(next);
    setOthers(kept.all().flatMap(({ run }) => (run === next.run ? [] : [run])));
    setWords(couldKeep ? null : "This browser keeps nothing: what is typed is lost when the page is closed.");
    // A draft that was removed would overwrite what is typed from here on; a stage that was saved comes back beside it.
    setRemoved((before) => (before?.saved === table || before?.saved === null ? null : before));
  };

  const putBack = async ({ draft: before, saved, takeOut }: Removed): Promise<void> => {
    setRemoved(null);
    try {
      await takeOut?.();
    } catch (error) {
      setWords(error instanceof Error ? error.message : String(error));
      return;
    }
    const now = kept.all().find(({ run }) => run === before.run) ?? emptyDraft(before.run);
    keep(saved === null ? before : { ...now, stages: { ...now.stages, [saved]: before.stages[saved] ?? {} } });
    if (saved !== null) setTable(saved);
    if (takeOut === null || folder === null) return;
    setWords(`Taken out of ${saved}.csv in ${folder.name} again.`);
    inHand.changed(await folder.again());
  };

  const hands: WriteUpHands | null = !awake
    ? null
    : {
        choose(given) {
          const run = given.trim();
          const now = latest.current;
          if (run === now.run) return;
          setTried(false);
          // Boxes filled in before the batch had a name are its own.
          const mine = now.run === "" ? { ...now, run } : emptyDraft(run);
          const known = kept.all().find((one) => one.run === run);
          if (now.run === "") kept.put(emptyDraft(""));
          keep(known ?? mine);
        },
        turnTo(next) {
          setTable(next);
          setTried(false);
        },
        type: (heading, text) => keep(withTyped(latest.current, table, heading, text)),
        now: (heading) =>
          keep(withTyped(latest.current, table, heading, nowInZone(folder?.house.timeZone ?? house.timeZone))),
        openFolder: inHand.choose,
        openKeptFolder: inHand.openKept,
        forgetFolder: inHand.forget,
        save() {
          setTried(true);
          void saveStage({ draft, table, folder, house, logs }).then((outcome) => {
            setProblems(outcome.problems);
            setWords(outcome.sentence);
            if (!outcome.saved) return;
            const rest = withoutStage(draft, table);
            setTried(false);
            setDraft(rest);
            kept.put(rest);
            setRemoved({ draft, saved: table, takeOut: outcome.takeOut });
            if (outcome.folder !== null) inHand.changed(outcome.folder);
          });
        },
        remove() {
          const rest = emptyDraft(draft.run);
          setDraft(rest);
          kept.put(rest);
          setRemoved({ draft, saved: null, takeOut: null });
          setWords(`Removed what was typed of ${draft.run === "" ? "this batch" : draft.run}.`);
        },
        undo() {
          if (removed !== null) void putBack(removed);
        },
      };

  const state = {
    ...startState(report),
    draft,
    table,
    fields: shownFields(table, draft, folder?.house.units ?? house.units, folder?.headings[table] ?? []),
    problems: problems[table] ?? [],
    tried,
    others,
    folder: folder?.name ?? null,
    keptFolder: inHand.kept,
    opensFolders: awake && opensFolders(),
    said: words,
    undo:
      removed === null
        ? null
        : removed.takeOut === null
          ? "Put it back"
          : `Take the row of ${removed.draft.run} out of ${removed.saved}.csv again`,
  };
  const body = <WriteUp state={state} hands={hands} />;
  return awake ? <BodyProvider value={context}>{body}</BodyProvider> : body;
}
