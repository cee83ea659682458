import { randomInt } from "node:crypto";
import { WORDS } from "./wordList.ts";

/** 8 words of 1,024: 80 bits. */
export const PASSPHRASE_WORDS = 8;

/** A new passphrase, each word drawn evenly and apart from the others by the system's random source. */
export function newPassphrase(): string {
  return Array.from({ length: PASSPHRASE_WORDS }, () => WORDS[randomInt(WORDS.length)]).join(" ");
}
