import type { FigureSpec } from "../../figures/figureSpec.ts";
import { chitSentence } from "../../findings/steepGermination/steepSentences.ts";
import type { SteepGerminationResult } from "../../report/steepGerminationResult.ts";
import { Entry } from "../Entry.tsx";
import { Figure } from "../Figure.tsx";
import { RunLinks } from "../RunLink.tsx";
import { Said } from "../Said.tsx";

/** Batches that chitted too little are linked up to here, the latest. */
const MOST = 8;

interface SteepProps {
  readonly result: SteepGerminationResult;
  readonly figure: FigureSpec | null;
  /** Address of the table that holds the figure's numbers. */
  readonly numbersIn: string;
}

/** Steep-out moisture against its range, and chit. */
export function Steep({ result: { steeps, chitted }, figure, numbersIn }: SteepProps) {
  const below = chitted?.below ?? [];
  if (steeps.length === 0) return null;
  return (
    <Entry id="steep" title="Steep">
      {figure === null ? <p>No steep-out moisture is known of these batches.</p> : null}
      {figure === null ? null : <Figure spec={figure} numbersIn={numbersIn} />}
      {chitted === null ? (
        <p class="small">Nobody logged the share of chitted kernels.</p>
      ) : (
        <p>
          <Said sentence={chitSentence(chitted)} />
          {below.length === 0 ? null : (
            <>
              {below.length > MOST ? " The latest: " : " Too little: "}
              <RunLinks runs={below.slice(-MOST)} />.
            </>
          )}
        </p>
      )}
    </Entry>
  );
}
