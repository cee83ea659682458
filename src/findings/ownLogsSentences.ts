import { printNumber } from "../units/print.ts";
import { counted } from "./counted.ts";
import type { Sentence } from "./sentence.ts";

/** What the page of one's own logs answers before any are read. */
export const chooseOwnLogs: Sentence = ["Choose your own logs, and every page here shows them."];

/** Where they are read. */
export const staysHere: Sentence = [
  "They are read on this computer, by this browser. Nothing of them is sent anywhere, and nothing is written to your files.",
];

/** Bytes that a browser is asked to read at most, of all files and of one; less on a computer of little memory. */
export const mostOwnLogs = { all: 600_000_000, oneFile: 250_000_000 } as const;

const wholeMegabytes = (bytes: number): string => `${printNumber(bytes / 1_000_000, 0)}\u00a0MB`;

/** How much can be chosen, said before it is. */
export const mostInWords =
  `A browser has memory for about ${wholeMegabytes(mostOwnLogs.all)} of logs, unpacked, and for ` +
  `${wholeMegabytes(mostOwnLogs.oneFile)} in one file; for less on a computer with less than 4\u00a0GB.`;

/** `14 files, 6.1 MB`. */
export function chosenInWords(files: readonly { readonly bytes: number }[]): string {
  const bytes = files.reduce((sum, file) => sum + file.bytes, 0);
  return `${counted(files.length, "file")}, ${printNumber(bytes / 1_000_000, 1)}\u00a0MB`;
}

/** What stands on every page while own logs are shown. */
export const whoseLogs = (house: string): string => `These pages show the logs of ${house}, read in this browser.`;
