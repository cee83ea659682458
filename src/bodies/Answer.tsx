import type { ComponentChildren } from "preact";
import type { Sentence } from "../findings/sentence.ts";
import { Fold } from "./Fold.tsx";
import { Said } from "./Said.tsx";

export type Stage = "steep" | "germination" | "kiln" | "none";

interface AnswerProps {
  /** The page's name, above the answer. */
  readonly page: string;
  readonly stage: Stage;
  readonly answer: Sentence;
  /** What the answer rests on, sentence by sentence; empty ones fall out. */
  readonly grounds: readonly Sentence[];
  /** How well that is known, folded: for whoever wants to weigh the answer. */
  readonly behind?: readonly Sentence[];
  /** Below the grounds: what leads on to a place of the page. */
  readonly children?: ComponentChildren;
}

/** The head of every page: its answer in words, big, and under it what the answer rests on. */
export function Answer({ page, stage, answer, grounds, behind = [], children }: AnswerProps) {
  const folded = behind.filter((sentence) => sentence.length > 0);
  return (
    <header class="answer">
      <p class="kicker" data-stage={stage}>
        {page}
      </p>
      <h1>
        <Said sentence={answer} />
      </h1>
      {grounds
        .filter((sentence) => sentence.length > 0)
        .map((sentence) => (
          <p class="lede">
            <Said sentence={sentence} />
          </p>
        ))}
      {children}
      {folded.length === 0 ? null : (
        <Fold summary="How well that is known" short>
          <div class="prose">
            {folded.map((sentence) => (
              <p>
                <Said sentence={sentence} />
              </p>
            ))}
          </div>
        </Fold>
      )}
    </header>
  );
}
