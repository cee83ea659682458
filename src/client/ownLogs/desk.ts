import { noOwnLogs, type OwnLogsState } from "../../bodies/ownLogs/ownLogsState.ts";
import type { ReportRows } from "../../report/report.ts";
import { MATCH_FILE } from "../../tables/foreign/foreignMatch.ts";
import { progressText, showProgress } from "../progressSlots.ts";
import { type OwnReports, openOwnReports } from "../reports.ts";
import type { SitePlaces } from "../sitePlaces.ts";
import type { ChosenFile } from "./chosenFile.ts";
import { houseForm, listenForDesk } from "./deskEvents.ts";
import type { ForeignDesk } from "./foreignDesk.ts";
import { houseAsked } from "./houseAsked.ts";
import { forgetLogs, type KeptLogs, keepLogs, keptLogs } from "./keptLogs.ts";
import { keepsLogs } from "./keptMark.ts";
import { saidOf } from "./saidOf.ts";
import { saveFile } from "./saveFile.ts";
import { saveProblems } from "./saveProblems.ts";
import { openBanner } from "./whoseBanner.tsx";

/** Where a reader's own logs are chosen, read, kept and taken out again. */
export interface OwnLogsDesk {
  readonly state: OwnLogsState;
  /** The reader's own logs, once they have been read. */
  readonly shown: { readonly reports: OwnReports; readonly rows: ReportRows } | null;
  /** Gives up reading. @returns whether anything was being read */
  cancel(): boolean;
}

interface DeskHost {
  readonly main: HTMLElement;
  readonly places: SitePlaces;
  /** What the page of own logs says has changed; done once it is drawn. */
  changed(): Promise<void>;
  /** Other logs are shown from here on. @param asAddressed with the choice that the address names; else with none */
  otherLogs(asAddressed: boolean): void;
}

const isMatchFile = (path: string): boolean => path === MATCH_FILE || path.endsWith(`/${MATCH_FILE}`);
const saveMatches = (text: string): void => saveFile(MATCH_FILE, new Blob([text], { type: "text/plain" }));

export function openDesk({ main, places, changed, otherLogs }: DeskHost): OwnLogsDesk {
  const banner = openBanner(places);
  let state: OwnLogsState = { ...noOwnLogs, timeZone: new Intl.DateTimeFormat().resolvedOptions().timeZone };
  let chosen: readonly ChosenFile[] = [];
  let putAway: readonly ChosenFile[] = [];
  /** What the logs that are shown, or are being read, were made from. */
  let source: KeptLogs | null = null;
  /** The same of those that were shown before. */
  let former: KeptLogs | null = null;
  /** What was kept in this browser until those that are shown were. */
  let gaveWay: KeptLogs | null = null;
  let reading: OwnReports | null = null;
  let shown: OwnLogsDesk["shown"] = null;

  /** Once files are chosen: what has headings of its own among them. */
  let foreign: ForeignDesk | null = null;

  const say = (next: Partial<OwnLogsState>): void => {
    state = { ...state, ...next };
    void changed();
  };

  /** The fields of the house as text of a house.toml; without settings while they make no sense. */
  const houseInFields = (): string => {
    const form = houseForm(main);
    try {
      return form === null ? "" : houseAsked(new FormData(form));
    } catch {
      return "";
    }
  };

  const openForeign = async (): Promise<ForeignDesk> => {
    const { openForeignDesk } = await import("./foreignDesk.ts");
    foreign ??= openForeignDesk({
      changed,
      house: houseInFields,
      turnTo: (id) => document.getElementById(id)?.focus(),
      save: saveMatches,
    });
    return foreign;
  };

  const choose = (files: readonly ChosenFile[]): void => {
    chosen = files;
    const isLooking = files.length > 0 || foreign !== null;
    say({
      chosen: files.map(({ path, blob }) => ({ path, bytes: blob.size })),
      canRechoose: files.length === 0 && putAway.length > 0,
      said: null,
      isLooking,
    });
    if (!isLooking) return;
    const done = (): void => {
      if (chosen === files) say({ isLooking: false });
    };
    // What cannot be opened is refused, with its sentence, when it is read.
    void openForeign()
      .then((desk) => desk.look(files))
      .then(done, done);
  };

  const tell = (text: string, working: boolean): void => {
    showProgress(main, text, working);
    const own = shown === null ? null : { rows: shown.rows, kept: state.kept };
    banner.show(own, working ? text : null);
  };

  /** Takes the logs off the pages. */
  const leave = (): void => {
    reading?.close();
    reading = null;
    if (shown === null) return;
    if (source !== null) former = source;
    shown.reports.close();
    shown = null;
    otherLogs(false);
  };

  const keep = async (): Promise<void> => {
    if (source === null) return;
    try {
      gaveWay = state.keptOthers ? await keptLogs() : null;
      await keepLogs(source);
      say({ kept: true, keptOthers: false, canKeepFormer: gaveWay !== null });
    } catch (error) {
      const why = `This browser could not keep the logs (${saidOf(error)}). They are shown until the page is closed.`;
      say({ kept: false, said: why });
    }
    tell("", false);
  };

  /** Keeps again what was kept before, instead of what is shown. */
  const keepFormer = async (): Promise<void> => {
    if (gaveWay === null) return;
    await keepLogs(gaveWay);
    gaveWay = null;
    say({ kept: false, keptOthers: true, canKeepFormer: false });
    tell("", false);
  };

  const forget = async (): Promise<void> => {
    await forgetLogs().catch(() => {});
    say({ kept: false, keptOthers: false, canKeepFormer: false });
    tell("", false);
  };

  const read = async (logs: KeptLogs, isRestored: boolean, wantsKeeping: boolean): Promise<void> => {
    leave();
    source = logs;
    const hasMatches = logs.files.some(({ path }) => isMatchFile(path));
    say({ stage: "reading", hasMatches, said: null, kept: isRestored, keptOthers: !isRestored && keepsLogs() });
    tell("Starting the engine", true);
    const own = openOwnReports({ kind: "open-own", ...logs, engine: places.engine }, (progress) => {
      if (reading === own) tell(progressText(progress), true);
    });
    reading = own;
    try {
      const rows = await own.whole;
      reading = null;
      shown = { reports: own, rows };
      if (former === logs) former = null;
      state = { ...state, stage: "shown", canReturn: former !== null };
      tell("", false);
      otherLogs(isRestored);
      if (wantsKeeping) await keep();
    } catch (error) {
      // Whoever cancelled, or read anew, has said so.
      if (reading !== own) return;
      reading = null;
      own.close();
      say({ stage: "none", said: saidOf(error), canReturn: former !== null });
      tell("", false);
    }
  };

  listenForDesk(main, () => state.stage !== "reading", {
    choose(files) {
      if (files.length === 0) return;
      choose([...new Map([...chosen, ...files].map((file) => [file.path, file])).values()]);
    },
    chooseNone() {
      putAway = chosen;
      choose([]);
    },
    rechoose: () => choose(putAway),
    read(fields) {
      try {
        const files = foreign?.withMatches(chosen) ?? chosen;
        void read({ files, house: houseAsked(fields) }, false, fields.get("keep") !== null);
      } catch (error) {
        say({ said: saidOf(error) });
      }
    },
    keepFormer: () => void keepFormer().catch((error: unknown) => say({ said: saidOf(error) })),
    turnKeeping: () => void (state.kept ? forget() : keep()),
    async goBack() {
      // Those kept from before go along only where they are the ones that are shown.
      if (state.kept) await forgetLogs().catch(() => {});
      state = { ...state, stage: "none", kept: false, said: null, canReturn: true };
      leave();
      tell("", false);
    },
    showAgain() {
      // Kept only where that is asked for anew.
      if (former !== null) void read(former, false, false);
    },
    saveProblems: () => saveProblems(shown?.rows.logs.problems ?? []),
    saveMatches() {
      // The last of them holds the others.
      const file = source?.files.findLast(({ path }) => isMatchFile(path));
      if (file !== undefined) saveFile(MATCH_FILE, file.blob);
    },
    settingsChanged: () => foreign?.settingsChanged(),
    fail: (error) => say({ said: saidOf(error) }),
  });

  const restore = async (): Promise<void> => {
    const logs = await keptLogs();
    if (logs !== null) await read(logs, true, false);
  };
  if (keepsLogs()) {
    restore().catch((error: unknown) =>
      say({ said: `The logs kept in this browser could not be read: ${saidOf(error)}.` }),
    );
  }

  return {
    get state() {
      return { ...state, foreign: foreign?.state ?? null };
    },
    get shown() {
      return shown;
    },
    cancel() {
      if (reading === null) return false;
      const own = reading;
      reading = null;
      own.close();
      say({ stage: "none", kept: false, said: "Cancelled; nothing was read.", canReturn: former !== null });
      tell("", false);
      return true;
    },
  };
}
