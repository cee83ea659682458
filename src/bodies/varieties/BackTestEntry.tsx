import type { FigureSpec } from "../../figures/figureSpec.ts";
import { backTestSentence, noBackTestSentence, trustSentence } from "../../findings/varieties/backTestSentences.ts";
import type { VarietiesResult } from "../../report/varietiesResult.ts";
import { Entry } from "../Entry.tsx";
import { Figure } from "../Figure.tsx";
import { Fold } from "../Fold.tsx";
import { Said } from "../Said.tsx";
import type { VarietiesFigures } from "./varietiesFigures.ts";

interface BackTestEntryProps {
  readonly result: VarietiesResult;
  readonly figures: VarietiesFigures;
}

/** Both numbers put to the test: sentences and, for each, what was foretold against what came. */
function BackTests({ result: { backTest, backTestOfEven }, figures }: BackTestEntryProps) {
  const drawn: readonly FigureSpec[] = [figures.onTargetForetold, figures.evenForetold].filter((one) => one !== null);
  return (
    <>
      <div class="prose">
        {backTest === null ? null : (
          <p>
            <Said sentence={backTestSentence(backTest, "onTarget")} />
          </p>
        )}
        {backTestOfEven === null ? null : (
          <p>
            <Said sentence={backTestSentence(backTestOfEven, "even")} />
          </p>
        )}
      </div>
      {drawn.length === 0 ? null : (
        <div class="pair">
          {drawn.map((spec) => (
            <Figure spec={spec} />
          ))}
        </div>
      )}
    </>
  );
}

/** How well past scores foretold the next batch, and how the scores are made; folded for most readers. */
export function BackTestEntry(props: BackTestEntryProps) {
  const { result } = props;
  return (
    <Entry id="worked-out" title="How far to trust it">
      <p>
        <Said sentence={result.backTest === null ? noBackTestSentence(result) : trustSentence(result.backTest)} />
      </p>
      <Fold summary="Past scores put to the test, and how the two numbers are made">
        {result.backTest === null ? null : <BackTests {...props} />}
        <div class="prose">
          <p>
            <b>On target</b> is the predicted chance that the next batch meets every tolerance that counts. Each measure
            has a Student-t predictive distribution from the variety’s own batches; what moves together (a wet batch
            weighs more) is joined by a correlation pooled within varieties and shrunk. <b>Even</b> is the same chance
            with every tolerance moved to the variety’s own centre, so that only the spread counts.
          </p>
          <p>
            A spread is never taken to be below what the meter can tell (its step over √12), and while batches are few
            it is drawn towards the spread of all varieties together: a few lucky batches earn no high score. Below five
            batches there is no score; below twelve it is early and has no interval; from twelve on its interval comes
            from drawing whole grain lots anew (bootstrap).
          </p>
          <p>
            Kiln hours enter as hours over what the air and the bed let one expect, so that weather is not blamed on a
            variety. Shares seen have Wilson’s interval.
          </p>
        </div>
      </Fold>
    </Entry>
  );
}
