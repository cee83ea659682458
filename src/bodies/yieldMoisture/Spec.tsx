import type { Interval } from "../../analysis/regressionFit.ts";
import { measureTitle, sharePercent } from "../../findings/chartWords.ts";
import { specSentence, specWords } from "../../findings/specSentences.ts";
import type { Capability, ControlChart } from "../../report/controlChartResult.ts";
import { printNumber } from "../../units/print.ts";
import { Entry } from "../Entry.tsx";
import { Figure } from "../Figure.tsx";
import { NOT_LOGGED } from "../printed.ts";
import { Said } from "../Said.tsx";
import { Scroll } from "../Scroll.tsx";
import type { MeasureFigures } from "./yieldMoistureFigures.ts";

const shareWithRange = ({ estimate, low, high }: Interval): string =>
  `${sharePercent(estimate)} (${sharePercent(low)} to ${sharePercent(high)})`;

function SpecRow({ row }: { readonly row: Capability }) {
  const { variety, runs, cpk, expectedOutsidePercent, seenOutside, seenOutsidePercent: seen, target } = row;
  return (
    <tr>
      <th scope="row">{variety}</th>
      <td class="keep">
        {specWords(row)}
        {target === null ? "" : `, target ${printNumber(target, 1)}`}
      </td>
      <td class="n">
        {cpk === null
          ? NOT_LOGGED
          : `${printNumber(cpk.estimate, 2)} (${printNumber(cpk.low, 2)} to ${printNumber(cpk.high, 2)})`}
      </td>
      <td class="n">{shareWithRange(expectedOutsidePercent)}</td>
      <td class="n">{`${printNumber(seenOutside, 0)} of ${printNumber(runs, 0)} (${sharePercent(seen.low)} to ${sharePercent(seen.high)})`}</td>
    </tr>
  );
}

function SpecTable({ chart }: { readonly chart: ControlChart }) {
  const title = `${measureTitle[chart.measure]} against the spec`;
  return (
    <Scroll label={title}>
      <table class="compact runs-table">
        <caption>{title}</caption>
        <thead>
          <tr>
            <th scope="col">variety</th>
            <th scope="col">spec</th>
            <th scope="col" class="n">
              Cpk
            </th>
            <th scope="col" class="n">
              expected outside
            </th>
            <th scope="col" class="n">
              seen outside
            </th>
          </tr>
        </thead>
        <tbody>
          {chart.capability.map((row) => (
            <SpecRow row={row} />
          ))}
        </tbody>
      </table>
    </Scroll>
  );
}

const tableId = ({ measure }: ControlChart): string => `spec-${measure.replaceAll("_", "-")}`;

interface SpecProps {
  readonly charts: readonly ControlChart[];
  /** One a chart, in the same order. */
  readonly figures: readonly Pick<MeasureFigures, "capability">[];
}

/** Does what comes off the kiln meet the spec, and would it go on doing so? */
export function Spec({ charts, figures }: SpecProps) {
  const able = charts.filter(({ runs, tooLittle }) => runs.length > 0 && tooLittle === null);
  if (able.length === 0) return null;
  const drawn = charts.flatMap((chart, i) => {
    const spec = figures[i]?.capability ?? null;
    return spec === null ? [] : [{ spec, numbersIn: `#${tableId(chart)}` }];
  });
  const judged = able.filter(({ capability }) => capability.length > 0);
  return (
    <Entry
      id="spec"
      title="Against the spec"
      note="In control is not yet within the spec: a steady house can be steadily wrong."
    >
      {able.map((chart) => (
        <p>
          <Said sentence={specSentence(chart)} />
        </p>
      ))}
      {drawn.length === 0 ? null : (
        <div class="pair">
          {drawn.map(({ spec, numbersIn }) => (
            <Figure spec={spec} numbersIn={numbersIn} />
          ))}
        </div>
      )}
      {judged.map((chart) => (
        <div id={tableId(chart)}>
          <SpecTable chart={chart} />
        </div>
      ))}
      {judged.length === 0 ? null : (
        <p class="table-note">
          Cpk: room between the mean and the nearer limit, in threes of the standard deviation; at 1 the limit lies just
          where a normal spread leaves about 1 batch in 740 beyond it. Where a spec has one limit, room to that one
          counts. In brackets 95&nbsp;% intervals; for the share seen, what chance alone allows. Every batch shown
          counts, those of signals too; varieties with fewer than five batches are not listed.
        </p>
      )}
    </Entry>
  );
}
