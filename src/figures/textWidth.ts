import { advanceWidths, measuredCharacters } from "./advanceWidths.ts";

/** The weights that figures set text in. */
export type TextWeight = 400 | 600;

const places = new Map([...measuredCharacters].map((character, place) => [character, place]));

/** What a character outside the table is taken to need, em: wide enough for the fallback face's usual letters. */
const UNMEASURED = 0.7;

/**
 * Width of one line of text in the site's sans face, in the unit of `size`, from the committed table of advance widths
 * (tabular figures on, no kerning, which Chromium's own layout undercuts by a hair). Works where no text can be measured.
 */
export function textWidth(text: string, size: number, weight: TextWeight = 400): number {
  const widths = advanceWidths[weight];
  let em = 0;
  for (const character of text) {
    const place = places.get(character);
    em += place === undefined ? UNMEASURED : (widths[place] ?? 0) / 1000;
  }
  return em * size;
}

/** `text` whole where it fits `width`, else cut at a word where possible and ended with an ellipsis. */
export function fitText(text: string, width: number, size: number, weight: TextWeight = 400): string {
  if (textWidth(text, size, weight) <= width) return text;
  let kept = [...text];
  while (kept.length > 1 && textWidth(`${kept.join("")}…`, size, weight) > width) kept = kept.slice(0, -1);
  const cut = kept.join("");
  const word = cut.lastIndexOf(" ");
  return `${(word > cut.length / 2 ? cut.slice(0, word) : cut).trimEnd()}…`;
}
