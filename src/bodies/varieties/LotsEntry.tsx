import type { FigureSpec } from "../../figures/figureSpec.ts";
import { lotsSentences } from "../../findings/varieties/lotSentences.ts";
import type { VarietyDetail } from "../../report/varietiesResult.ts";
import { useUnits } from "../context.ts";
import { Entry } from "../Entry.tsx";
import { Figure } from "../Figure.tsx";
import { Fold } from "../Fold.tsx";
import { Said } from "../Said.tsx";

interface LotsEntryProps {
  readonly detail: VarietyDetail;
  readonly figure: FigureSpec | null;
  readonly others: FigureSpec | null;
}

/** A variety's grain lots side by side; a lot that is uneven in itself is told apart from one at another level. */
export function LotsEntry({ detail, figure, others }: LotsEntryProps) {
  const units = useUnits();
  const said = lotsSentences(detail.splits, units);
  if (figure === null) return null;
  return (
    <Entry id="lots-of-grain" title="Grain lots" note="By date; in brackets the batches of each.">
      {said.length === 0 ? (
        <p>No lot stands out by its level or by its own spread.</p>
      ) : (
        <ul class="lines">
          {said.map((sentence) => (
            <li>
              <Said sentence={sentence} />
            </li>
          ))}
        </ul>
      )}
      <Figure spec={figure} />
      {others === null ? null : (
        <Fold summary="The same lots by the other measures">
          <Figure spec={others} />
        </Fold>
      )}
    </Entry>
  );
}
