import type { FigureSpec } from "../../figures/figureSpec.ts";
import { plainCells } from "../../figures/plainCells.ts";
import { takenLogs, takenRuns } from "../../report/ask/takenTables.ts";
import type { HouseBrief } from "../../report/report.ts";
import { askedCsv } from "../../tables/askedText.ts";
import { guardedCsv } from "../../tables/guardedCsv.ts";
import { logText } from "../../tables/logsOut.ts";
import { tableOfAnswer } from "../../tables/tableOfAnswer.ts";
import type { Ask } from "../askLogs/askCalls.ts";
import { figurePng } from "./figurePng.ts";
import { figureSvg } from "./figureSvg.ts";
import { saveFile } from "./saveFile.ts";
import { siteFace } from "./siteFace.ts";

interface Taking {
  readonly main: HTMLElement;
  readonly ask: Ask;
  /** What the figures on the page were drawn from. */
  readonly figures: ReadonlyMap<string, FigureSpec>;
  readonly house: Pick<HouseBrief, "name" | "invented">;
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

/** @returns what was saved, in words */
async function takeTable(name: string, ask: Ask): Promise<string> {
  const log = takenLogs.find((one) => one.name === name);
  const answer = await ask(log?.sql ?? takenRuns, { mostRows: null });
  const path = log?.path ?? "batches.csv";
  const file = path.split("/").at(-1) ?? path;
  saveFile(file, CSV, log === undefined ? askedCsv(answer) : logText(tableOfAnswer(log.name, answer)));
  return `Saved ${file}: ${answer.rows.length} ${answer.rows.length === 1 ? "row" : "rows"}.`;
}

/** Saves what a button stands for: a figure in one of its forms, a log, or all batches. */
export async function takeAway(button: HTMLElement, taking: Taking): Promise<void> {
  const what = button.dataset.take ?? "";
  const slot = taking.main.querySelector('[data-slot="taken"]');
  const tell = (text: string): void => {
    if (slot !== null) slot.textContent = text;
  };
  try {
    tell("");
    if (button.closest("figure") !== null) await takeFigure(button, what, taking);
    else tell(await takeTable(what, taking.ask));
  } catch (error) {
    const why = error instanceof Error ? error.message : String(error);
    tell(why === "cancelled" ? "Cancelled; nothing was saved." : `That could not be saved: ${why}`);
  }
}
