import { printNumber } from "../units/print.ts";
import type { ReadingProgress } from "./ownLogs/readingProgress.ts";
import type { LoadProgress } from "./workerCalls.ts";

const BYTES_PER_MEGABYTE = 1_000_000;

const SAYS: Readonly<Record<LoadProgress["part"], string>> = {
  engine: "Fetching the engine",
  tables: "Fetching the logs",
  reading: "Reading your logs",
};

const megabytes = (bytes: number): string => printNumber(bytes / BYTES_PER_MEGABYTE, 1);

/** How far reading the reader's own logs has come, once all bytes are read. */
function summingText({ loads, ofLoads }: ReadingProgress): string {
  if (ofLoads > 0 && loads >= ofLoads) return "All read and summed up; putting the pages together";
  return `All read; summing the loads up${loads === 0 ? "" : `: ${loads} of ${ofLoads}`}`;
}

/** `Fetching the engine: 3.1 of 7.7 MB`; `Reading your logs: 31.0 of 52.4 MB, 12 of 190 loads summed up`. */
export function progressText(progress: LoadProgress): string {
  const { part, received, total } = progress;
  if (part === "reading" && received >= total) return summingText(progress);
  const of = total > 0 ? ` of ${megabytes(total)}` : "";
  const summed =
    part === "reading" && progress.loads > 0 ? `, ${progress.loads} of ${progress.ofLoads}\u00a0loads summed up` : "";
  return `${SAYS[part]}: ${megabytes(received)}${of}\u00a0MB${summed}`;
}

/** Says `text` in every place of the page that is kept for it, and offers to cancel while `cancellable`. */
export function showProgress(body: HTMLElement, text: string, cancellable: boolean): void {
  for (const slot of body.querySelectorAll('[data-slot="progress"]')) slot.textContent = text;
  for (const button of body.querySelectorAll<HTMLElement>('[data-action="cancel"]')) button.hidden = !cancellable;
}
