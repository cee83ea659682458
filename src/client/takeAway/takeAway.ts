import type { FigureSpec } from "../../figures/figureSpec.ts";
import { plainCells } from "../../figures/plainCells.ts";
import { counted } from "../../findings/counted.ts";
import { takenLogs, takenRuns } from "../../report/ask/takenTables.ts";
import type { HouseBrief } from "../../report/report.ts";
import { askedCsv } from "../../tables/askedText.ts";
import { guardedCsv } from "../../tables/guardedCsv.ts";
import { logText } from "../../tables/logsOut.ts";
import { tableOfAnswer } from "../../tables/tableOfAnswer.ts";
import { showProgress } from "../progressSlots.ts";
import type { Reports } from "../reports.ts";
import { figurePng } from "./figurePng.ts";
import { figureSvg } from "./figureSvg.ts";
import { saveFile } from "./saveFile.ts";
import { siteFace } from "./siteFace.ts";
import { untilAborted } from "./untilAborted.ts";
import type { PackedPart } from "./zipFolder.ts";

interface Taking {
  readonly main: HTMLElement;
  /** The logs that the page shows. */
  readonly source: Pick<Reports, "ask" | "published" | "readings">;
  /** What the figures on the page were drawn from. */
  readonly figures: ReadonlyMap<string, FigureSpec>;
  readonly house: Pick<HouseBrief, "name" | "invented">;
  /** Aborted where the reader gives it up. */
  readonly signal: AbortSignal;
}

const CSV = "text/csv;charset=utf-8";

async function takeFigure(button: HTMLElement, form: string, { figures, house }: Taking): Promise<void> {
  const figure = button.closest("figure");
  const id = figure?.getAttribute("aria-labelledby")?.replace(/-title$/, "") ?? "";
  const spec = figures.get(id);
  const drawn = figure?.querySelector<SVGSVGElement>(".drawing-wide svg, .drawing svg");
  if (spec === undefined || drawn == null) throw new RangeError(`the page holds no figure ${id}`);
  if (form === "csv") {
    saveFile(`${id}.csv`, CSV, guardedCsv(plainCells(spec.table)));
    return;
  }
  const whose = house.invented ? `${house.name}, an invented house` : house.name;
  const file = figureSvg(drawn, { title: spec.title, summary: spec.summary, house: whose }, await siteFace());
  if (form === "svg") saveFile(`${id}.svg`, "image/svg+xml", file.markup);
  else saveFile(`${id}.png`, "image/png", await figurePng(file));
}

type TellProgress = (text: string) => void;

/** @returns what was saved, in words */
async function takeTable(name: string, { source, signal }: Taking, progress: TellProgress): Promise<string> {
  const log = takenLogs.find((one) => one.name === name);
  const path = log?.path ?? "batches.csv";
  const file = path.split("/").at(-1) ?? path;
  progress(`Collecting ${file}`);
  const answer = await source.ask(log?.sql ?? takenRuns, { mostRows: null, signal });
  saveFile(file, CSV, log === undefined ? askedCsv(answer) : logText(tableOfAnswer(log.name, answer)));
  return `Saved ${file}: ${counted(answer.rows.length, "row")}.`;
}

const FOLDER = "cleaned-logs.zip";

/** All of the logs as a folder of the log format, packed. @returns what was saved, in words */
async function takeFolder({ source, signal }: Taking, progress: TellProgress): Promise<string> {
  progress("Collecting the logs");
  const [{ takenFolder }, { zipFolder }] = await Promise.all([
    import("../../report/ask/takenFolder.ts"),
    import("./zipFolder.ts"),
  ]);
  let files = 0;
  async function* parts(): AsyncGenerator<PackedPart> {
    const published = await untilAborted(source.published(), signal);
    const readings = (file: string) => untilAborted(source.readings(file), signal);
    const ask = (sql: string) => source.ask(sql, { mostRows: null, signal });
    for await (const { path, text, done, of } of takenFolder({ published, ask, readings })) {
      files += 1;
      progress(`Packing the logs: ${done} of ${of}`);
      yield { path: `logs/${path}`, text };
    }
  }
  saveFile(FOLDER, "application/zip", await zipFolder(parts(), signal));
  return `Saved ${FOLDER}: ${counted(files, "file")}.`;
}

/** Saves what a button stands for: a figure in one of its forms, a log, all batches, or all logs. */
export async function takeAway(button: HTMLElement, taking: Taking): Promise<void> {
  const what = button.dataset.take ?? "";
  const { main, signal } = taking;
  const slot = main.querySelector('[data-slot="taken"]');
  const tell = (text: string): void => {
    if (slot !== null) slot.textContent = text;
  };
  const progress: TellProgress = (text) => {
    if (!signal.aborted) showProgress(main, text, true);
  };
  try {
    tell("");
    if (button.closest("figure") !== null) await takeFigure(button, what, taking);
    else tell(await (what === "folder" ? takeFolder(taking, progress) : takeTable(what, taking, progress)));
  } catch (error) {
    const why = error instanceof Error ? error.message : String(error);
    tell(signal.aborted || why === "cancelled" ? "Cancelled; nothing was saved." : `That could not be saved: ${why}`);
  } finally {
    showProgress(main, "", false);
  }
}
