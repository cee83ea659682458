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
  // In words the measure that a reason speaks of, else the one of which most lies between lots.
  const known = splits
    .filter(({ shareBetween }) => shareBetween !== null)
    .toSorted((a, b) => (b.shareBetween?.estimate ?? 0) - (a.shareBetween?.estimate ?? 0));
  const first = known.find(({ measure }) => measure === reasons[0]?.measure) ?? known[0];
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
      {splits.some(({ seasonTakenOut }) => seasonTakenOut) ? (
        <p class="table-note">
          The house’s season was taken out before lots were compared and the spread was split; levels and spreads are
          shown as they were measured.
        </p>
      ) : null}
    </Entry>
  );
}
