/** A stretch of a sentence: plain words, or a number that the sentence is about. */
export type Part = string | { readonly strong: string };

/** A sentence as pages, terminal and title bar can each say it. */
export type Sentence = readonly Part[];

export const strong = (text: string): Part => ({ strong: text });

/** The words alone. */
export function plainText(sentence: Sentence): string {
  return sentence.map((part) => (typeof part === "string" ? part : part.strong)).join("");
}

/** Several sentences as one, a space between. Empty ones fall out. */
export function joinSentences(sentences: readonly Sentence[]): Sentence {
  return sentences
    .filter((sentence) => sentence.length > 0)
    .flatMap((sentence, i) => (i ? [" ", ...sentence] : sentence));
}

/** A sentence's words as they stand inside another: `It would take…`, `it would take…`. */
export const lowerFirst = (text: string): string => `${text.charAt(0).toLowerCase()}${text.slice(1)}`;
