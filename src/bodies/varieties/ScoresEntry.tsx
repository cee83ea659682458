import type { FigureSpec } from "../../figures/figureSpec.ts";
import { scoreSentence } from "../../findings/varieties/chanceSentences.ts";
import { toleranceSentence } from "../../findings/varieties/toleranceSentence.ts";
import type { VarietiesResult } from "../../report/varietiesResult.ts";
import { Entry } from "../Entry.tsx";
import { Figure } from "../Figure.tsx";
import { Said } from "../Said.tsx";
import { ScoresTable } from "./ScoresTable.tsx";

/** The two numbers of each variety as a drawing and a table; those without a score in a sentence each. */
export function ScoresEntry({
  result,
  figure,
}: {
  readonly result: VarietiesResult;
  readonly figure: FigureSpec | null;
}) {
  const { scores } = result;
  if (scores.length === 0) return null;
  const unscored = scores.filter(({ standing }) => standing === "none");
  return (
    <Entry id="scores" title="Two numbers a variety" note="Lowest on target first.">
      {figure === null ? null : <Figure spec={figure} numbersIn="#every-variety" />}
      {unscored.map((score) => (
        <p>
          <Said sentence={scoreSentence(score)} />
        </p>
      ))}
      <div id="every-variety">
        <ScoresTable scores={scores} />
      </div>
      <p class="small">
        <Said sentence={toleranceSentence(result)} />
      </p>
    </Entry>
  );
}
