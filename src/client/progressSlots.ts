import { printNumber } from "../units/print.ts";
import type { ReadingProgress } from "./ownLogs/readingProgress.ts";
import type { LoadProgress } from "./workerCalls.ts";

const BYTES_PER_MEGABYTE = 1_000_000;

const SAYS: Readonly<Record<"engine" | "tables", string>> = {
  engine: "Fetching the engine",
  tables: "Fetching the logs",
};

const megabytes = (bytes: number): string => printNumber(bytes / BYTES_PER_MEGABYTE, 1);

/** `; putting readings in order, 34 %`: what is done while no bytes come. */
function stepText({ step }: ReadingProgress): string {
  if (step === null) return "";
  if (step.name === "joining") return "; joining them batch by batch";
  if (step.name !== "ordering") return "";
  return `; putting readings in order, ${printNumber((100 * step.rows) / step.of, 0)}\u00a0%`;
}

/** How far reading the reader's own logs has come. */
function readingText(progress: ReadingProgress): string {
  const { received, total, loads, ofLoads, step } = progress;
  if (step?.name === "gathering" || (received >= total && ofLoads > 0 && loads >= ofLoads)) {
    return "All read and summed up; putting the pages together";
  }
  const read =
    received >= total ? "All read" : `Reading your logs: ${megabytes(received)} of ${megabytes(total)}\u00a0MB`;
  const summed =
    loads > 0
      ? `, ${loads} of ${ofLoads}\u00a0loads summed up`
      : received >= total && step === null
        ? "; summing the loads up"
        : "";
  return `${read}${stepText(progress)}${summed}`;
}

/** `Fetching the engine: 3.1 of 7.7 MB`; `Reading your logs: 31.0 of 52.4 MB, 12 of 190 loads summed up`. */
export function progressText(progress: LoadProgress): string {
  if (progress.part === "reading") return readingText(progress);
  const { part, received, total } = progress;
  const of = total > 0 ? ` of ${megabytes(total)}` : "";
  return `${SAYS[part]}: ${megabytes(received)}${of}\u00a0MB`;
}

/** Says `text` in every place of the page that is kept for it, and offers to cancel while `cancellable`. */
export function showProgress(body: HTMLElement, text: string, cancellable: boolean): void {
  for (const slot of body.querySelectorAll('[data-slot="progress"]')) slot.textContent = text;
  for (const button of body.querySelectorAll<HTMLElement>('[data-action="cancel"]')) button.hidden = !cancellable;
}
