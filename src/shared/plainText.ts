/** Marks that turn the direction of text, and with it what stands after them (UAX #9: embeddings, overrides, isolates, marks). */
const DIRECTION_MARKS = /[\u061c\u200e\u200f\u202a-\u202e\u2066-\u2069]/g;
/** Control characters (Unicode's category Cc), line and paragraph separators, and the byte order mark. */
const CONTROLS = /[\p{Cc}\u2028\u2029\ufeff]+/gu;

/**
 * A text from the logs as a page may print it within a line: no mark that turns the text around it, no control character.
 * Letters of every script stay, and run in their own direction.
 */
export const plainText = (text: string): string =>
  text.replaceAll(DIRECTION_MARKS, "").replaceAll(CONTROLS, " ").trim();
