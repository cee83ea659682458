import { printNumber } from "../units/print.ts";
import type { LoadProgress } from "./workerCalls.ts";

const BYTES_PER_MEGABYTE = 1_000_000;

const SAYS: Readonly<Record<LoadProgress["part"], string>> = {
  engine: "Fetching the engine",
  tables: "Fetching the logs",
  reading: "Reading your logs",
};

/** `Fetching the engine: 3.1 of 7.7 MB`. */
export function progressText({ part, received, total }: LoadProgress): string {
  const megabytes = (bytes: number): string => printNumber(bytes / BYTES_PER_MEGABYTE, 1);
  if (part === "reading" && received >= total) return "All read; summing the loads up";
  const of = total > 0 ? ` of ${megabytes(total)}` : "";
  return `${SAYS[part]}: ${megabytes(received)}${of}\u00a0MB`;
}

/** Says `text` in every place of the page that is kept for it, and offers to cancel while `cancellable`. */
export function showProgress(body: HTMLElement, text: string, cancellable: boolean): void {
  for (const slot of body.querySelectorAll('[data-slot="progress"]')) slot.textContent = text;
  for (const button of body.querySelectorAll<HTMLElement>('[data-action="cancel"]')) button.hidden = !cancellable;
}
