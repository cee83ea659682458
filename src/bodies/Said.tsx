import type { Sentence } from "../findings/sentence.ts";

/** Names with a hyphen beside a figure, as batches and lots have: `26-178`, `L25-04`. */
const NAMES = /([\p{L}\d]*\d-[\p{L}\d][\p{L}\d-]{0,20}|[\p{L}\d]+-\d[\p{L}\d-]{0,20})/u;

/** A line may break at a hyphen; a name is kept whole, and stays the name where it is copied or searched for. */
function Words({ text }: { readonly text: string }) {
  const pieces = text.split(NAMES);
  if (pieces.length === 1) return <>{text}</>;
  return <>{pieces.map((piece, at) => (at % 2 === 0 ? piece : <span class="nowrap">{piece}</span>))}</>;
}

/** A sentence with the numbers it is about set strong. */
export function Said({ sentence }: { readonly sentence: Sentence }) {
  return (
    <>
      {sentence.map((part) =>
        typeof part === "string" ? (
          <Words text={part} />
        ) : (
          <b>
            <Words text={part.strong} />
          </b>
        ),
      )}
    </>
  );
}
