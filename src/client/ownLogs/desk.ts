import { noOwnLogs, type OwnLogsState } from "../../bodies/ownLogs/ownLogsState.ts";
import type { ReportRows } from "../../report/report.ts";
import { progressText, showProgress } from "../progressSlots.ts";
import { type OwnReports, openOwnReports } from "../reports.ts";
import type { SitePlaces } from "../sitePlaces.ts";
import type { ChosenFile } from "./chosenFile.ts";
import { chosenFiles, droppedFiles } from "./droppedFiles.ts";
import { houseAsked } from "./houseAsked.ts";
import { forgetLogs, type KeptLogs, keepLogs, keptLogs } from "./keptLogs.ts";
import { keepsLogs } from "./keptMark.ts";
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
  /** What the page of own logs says has changed. */
  changed(): void;
  /** Other logs are shown from here on. */
  otherLogs(): void;
}

const OUT_OF_MEMORY = /allocation|out of memory|invalid array length|could not allocate|too large/i;

function saidOf(error: unknown): string {
  const why = error instanceof Error ? error.message : String(error);
  if (OUT_OF_MEMORY.test(why)) {
    return "The memory that this browser gives a page ran out. Choose fewer of the readings, or make the site on your computer.";
  }
  return why;
}

export function openDesk({ main, places, changed, otherLogs }: DeskHost): OwnLogsDesk {
  const banner = openBanner(places);
  const zone = new Intl.DateTimeFormat().resolvedOptions().timeZone;
  let state: OwnLogsState = { ...noOwnLogs, timeZone: zone };
  let chosen: readonly ChosenFile[] = [];
  /** What the logs that are shown, or being read, were made from. */
  let source: KeptLogs | null = null;
  let reading: OwnReports | null = null;
  let shown: OwnLogsDesk["shown"] = null;

  const say = (next: Partial<OwnLogsState>): void => {
    state = { ...state, ...next };
    changed();
  };

  const choose = (files: readonly ChosenFile[]): void => {
    if (files.length === 0) return;
    const byPath = new Map([...chosen, ...files].map((file) => [file.path, file]));
    chosen = [...byPath.values()];
    say({ chosen: chosen.map(({ path, blob }) => ({ path, bytes: blob.size })), said: null });
  };

  const tell = (text: string, working: boolean): void => {
    showProgress(main, text, working);
    banner.show(shown?.rows ?? null, working ? text : null);
  };

  /** Takes the logs off the pages; those that are kept stay kept. */
  const leave = (): void => {
    reading?.close();
    reading = null;
    if (shown === null) return;
    shown.reports.close();
    shown = null;
    otherLogs();
  };

  const keep = async (): Promise<void> => {
    if (source === null) return;
    try {
      await keepLogs(source);
      say({ keep: true });
    } catch (error) {
      say({
        keep: false,
        said: `This browser could not keep the logs (${saidOf(error)}). They are shown until you close the page.`,
      });
    }
  };

  const forget = async (): Promise<void> => {
    await forgetLogs().catch(() => {});
    say({ keep: false });
  };

  const read = async (logs: KeptLogs): Promise<void> => {
    leave();
    source = logs;
    say({ stage: "reading", said: null });
    tell("Starting the engine", true);
    const own = openOwnReports({ kind: "open-own", ...logs, engine: places.engine }, (progress) => {
      if (reading === own) tell(progressText(progress), true);
    });
    reading = own;
    try {
      const rows = await own.whole;
      reading = null;
      shown = { reports: own, rows };
      state = { ...state, stage: "shown" };
      tell("", false);
      otherLogs();
      if (state.keep) await keep();
    } catch (error) {
      // Whoever cancelled, or read anew, has said so.
      if (reading !== own) return;
      reading = null;
      own.close();
      say({ stage: "none", said: saidOf(error) });
      tell("", false);
    }
  };

  const readForm = (form: HTMLFormElement): void => {
    try {
      void read({ files: chosen, house: houseAsked(new FormData(form)) });
    } catch (error) {
      say({ said: saidOf(error) });
    }
  };

  const back = async (): Promise<void> => {
    await forgetLogs().catch(() => {});
    state = { ...state, stage: "none", keep: false, said: null };
    leave();
    tell("", false);
  };

  const press = (button: string | undefined): void => {
    if (button === "none") {
      chosen = [];
      for (const field of main.querySelectorAll<HTMLInputElement>('input[type="file"]')) field.value = "";
      say({ chosen: [], said: null });
    } else if (button === "keep-now") void (state.keep ? forget() : keep());
    else if (button === "back") void back();
    else if (button === "problems") saveProblems(shown?.rows.logs.problems ?? []);
  };

  main.addEventListener("change", ({ target }) => {
    if (!(target instanceof HTMLInputElement)) return;
    if (target.dataset.own === "files" || target.dataset.own === "folder") choose(chosenFiles(target.files));
    if (target.dataset.own === "keep") say({ keep: target.checked });
  });
  main.addEventListener("submit", (event) => {
    if (!(event.target instanceof HTMLFormElement) || event.target.dataset.form !== "own-logs") return;
    event.preventDefault();
    readForm(event.target);
  });
  document.addEventListener("click", ({ target }) => {
    press(target instanceof Element ? target.closest<HTMLElement>("button[data-own]")?.dataset.own : undefined);
  });
  const takesDrop = (): boolean => state.stage !== "reading" && main.querySelector('[data-own="drop"]') !== null;
  document.addEventListener("dragover", (event) => {
    if (takesDrop()) event.preventDefault();
  });
  document.addEventListener("drop", (event) => {
    if (!takesDrop() || event.dataTransfer === null) return;
    event.preventDefault();
    droppedFiles(event.dataTransfer).then(choose, (error: unknown) => say({ said: saidOf(error) }));
  });

  /** Chosen before anybody listened. */
  const chosenEarlier = (): void => {
    for (const field of main.querySelectorAll<HTMLInputElement>('input[type="file"][data-own]')) {
      choose(chosenFiles(field.files));
    }
  };

  const restore = async (): Promise<void> => {
    const logs = await keptLogs();
    if (logs === null) return;
    state = { ...state, keep: true };
    await read(logs);
  };

  if (keepsLogs())
    restore().catch((error: unknown) =>
      say({ said: `The logs kept in this browser could not be read: ${saidOf(error)}.` }),
    );
  else queueMicrotask(chosenEarlier);

  return {
    get state() {
      return state;
    },
    get shown() {
      return shown;
    },
    cancel() {
      if (reading === null) return false;
      const own = reading;
      reading = null;
      own.close();
      say({ stage: "none", said: "Cancelled; nothing was read." });
      tell("", false);
      return true;
    },
  };
}
