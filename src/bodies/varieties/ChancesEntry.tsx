import type { FigureSpec } from "../../figures/figureSpec.ts";
import { dragSentence } from "../../findings/varieties/chanceSentences.ts";
import { scored } from "../../findings/varieties/scoreWords.ts";
import type { VarietiesResult } from "../../report/varietiesResult.ts";
import { Entry } from "../Entry.tsx";
import { Figure } from "../Figure.tsx";
import { Said } from "../Said.tsx";

/** What each measure alone does to the score, in order of drag, in words and drawn. */
export function ChancesEntry({
  result,
  figure,
}: {
  readonly result: VarietiesResult;
  readonly figure: FigureSpec | null;
}) {
  const able = scored(result.scores);
  if (able.length === 0) return null;
  return (
    <Entry id="measures" title="Which measure costs most" note="Alone; together they may fail in the same batches.">
      <ul class="lines">
        {able.map((score) => (
          <li>
            <Said sentence={dragSentence(score)} />
          </li>
        ))}
      </ul>
      {figure === null ? null : <Figure spec={figure} />}
    </Entry>
  );
}
