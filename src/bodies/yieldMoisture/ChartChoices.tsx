import type { RuleName } from "../../analysis/controlCharts/signal.ts";
import { measureTitle, ruleMeaning, ruleWords } from "../../findings/chartWords.ts";
import { listed } from "../../findings/counted.ts";
import { falseSignalSentence } from "../../findings/falseSignalSentence.ts";
import { plainText, type Sentence } from "../../findings/sentence.ts";
import type { ControlChart } from "../../report/controlChartResult.ts";
import { useBody } from "../context.ts";
import { Said } from "../Said.tsx";

const RULES = Object.keys(ruleMeaning) as readonly RuleName[];

interface ChartChoicesProps {
  readonly charts: readonly ControlChart[];
  /** More than one variety is shown, so that they can stand together or apart. */
  readonly several: boolean;
}

/** What the rules cost, said once where it is the same for all charts. */
function costsOf(charts: readonly ControlChart[]): readonly { readonly of: string; readonly cost: Sentence }[] {
  const costs = charts.map((chart) => ({ of: measureTitle[chart.measure], cost: falseSignalSentence(chart) }));
  const [first] = costs;
  if (first === undefined || costs.length < 2) return costs;
  const same = costs.every(({ cost }) => plainText(cost) === plainText(first.cost));
  return same ? [{ of: "For each measure", cost: first.cost }] : costs;
}

/** How varieties stand on the charts and what raises a signal, with what the chosen set costs. Hidden where scripting is off. */
export function ChartChoices({ charts, several }: ChartChoicesProps) {
  const { view } = useBody();
  const rules = charts[0]?.rules ?? [];
  if (rules.length === 0) return null;
  const costs = costsOf(charts);
  return (
    <div class="choose chart-choices needs-scripting">
      {several ? (
        <label class="tick">
          <input type="checkbox" data-control="apart" value="yes" checked={view.apart} /> Each variety apart
        </label>
      ) : null}
      <details>
        <summary>
          <span class="as-link">What raises a signal</span>
        </summary>
        <fieldset class="rules">
          <legend class="small">{`Now: ${listed(rules.map((rule) => ruleWords[rule]))}. Each one more cries wolf more often.`}</legend>
          {RULES.map((rule) => (
            <label class="tick">
              <input type="checkbox" data-control="rules" value={rule} checked={rules.includes(rule)} />{" "}
              {ruleMeaning[rule]}
            </label>
          ))}
        </fieldset>
        {costs.map(({ of, cost }) => (
          <p class="small">
            {`${of}: `}
            <Said sentence={cost} />
          </p>
        ))}
      </details>
    </div>
  );
}
