import type { FigureSpec } from "../../figures/figureSpec.ts";
import { splitAdvice, splitSentence } from "../../findings/varieties/lotSentences.ts";
import { reasonSentence, reasonTitle } from "../../findings/varieties/reasonSentences.ts";
import type { VarietyDetail } from "../../report/varietiesResult.ts";
import { useUnits } from "../context.ts";
import { Entry } from "../Entry.tsx";
import { Figure } from "../Figure.tsx";
import { Said } from "../Said.tsx";

const KINDS = ["lot", "grain", "process"] as const;

/** Where the spread comes from: between lots or within them, and whether grain or process changed. */
export function SpreadEntry({
  detail,
  figure,
}: {
  readonly detail: VarietyDetail;
  readonly figure: FigureSpec | null;
}) {
  const units = useUnits();
  const { splits, reasons } = detail;
  const lacking = [...new Set(splits.flatMap(({ tooLittle }) => tooLittle ?? []))];
  const first = splits.find(({ shareBetween }) => shareBetween !== null);
  if (splits.length === 0 && reasons.length === 0) return null;
  return (
    <Entry id="spread" title="Where the spread comes from">
      {reasons.length === 0 ? (
        <p>Nothing that was logged of grain or process goes with the spread by more than chance.</p>
      ) : (
        <dl class="facts facts-long">
          {KINDS.flatMap((kind) =>
            reasons
              .filter((reason) => reason.kind === kind)
              .map((reason) => (
                <div>
                  <dt>{reasonTitle[kind]}</dt>
                  <dd class="why">
                    <Said sentence={reasonSentence(reason, units)} />
                  </dd>
                </div>
              )),
          )}
        </dl>
      )}
      {first === undefined ? null : (
        <p>
          <Said sentence={splitSentence(first, units)} /> <Said sentence={splitAdvice(splits)} />
        </p>
      )}
      {first === undefined ? lacking.map((why) => <p class="refusal">{why}</p>) : null}
      {figure === null ? null : <Figure spec={figure} />}
    </Entry>
  );
}
