import type { Sentence } from "../findings/sentence.ts";

/** A sentence with the numbers it is about set strong. */
export function Said({ sentence }: { readonly sentence: Sentence }) {
  return <>{sentence.map((part) => (typeof part === "string" ? part : <b>{part.strong}</b>))}</>;
}
