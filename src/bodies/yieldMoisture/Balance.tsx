import { balanceSentence, negativeSentence } from "../../findings/balanceSentence.ts";
import type { VarietyBalance } from "../../report/controlChartResult.ts";
import { printNumber } from "../../units/print.ts";
import { useUnits } from "../context.ts";
import { Entry } from "../Entry.tsx";
import { Figure } from "../Figure.tsx";
import { printed } from "../printed.ts";
import { Said } from "../Said.tsx";
import { Scroll } from "../Scroll.tsx";
import type { YieldMoistureFigures } from "./yieldMoistureFigures.ts";

const share = (value: number | null): string => printed(value, "percent", "metric", { bare: true });

/** Where the grain's dry matter goes, variety by variety, with what each number rests on. */
export function Balance({
  rows,
  figures: { balance: figure },
}: {
  readonly rows: readonly VarietyBalance[];
  readonly figures: Pick<YieldMoistureFigures, "balance">;
}) {
  const units = useUnits();
  const negative = negativeSentence(rows);
  const title = "Mass balance by variety";
  if (rows.length === 0) return null;
  return (
    <Entry id="balance" title="Where the grain goes">
      <p>
        <Said sentence={balanceSentence(rows, units)} />
      </p>
      <div class="pair">
        {figure === null ? null : <Figure spec={figure} numbersIn="#balance-table" />}
        <div class="prose">
          <p class="small">
            Per cent of the grain’s dry matter, but for the yield as is: malt over grain as weighed, which a change of
            moisture alone can move. Each number is the middle one of its batches (median), so a row need not add up.
            Rootlets are taken to be as dry as the malt they fell from (common practice). By books a house loses 7 to
            12&nbsp;% in all: 0.5 to 1.5 in steep, 4 to 8 by respiration, 3 to 5 as rootlets (from memory).
          </p>
          {negative.length === 0 ? null : (
            <p>
              <Said sentence={negative} />
            </p>
          )}
        </div>
      </div>
      <div id="balance-table">
        <Scroll label={title}>
          <table class="compact runs-table">
            <caption>{title}</caption>
            <thead>
              <tr>
                <th scope="col">variety</th>
                <th scope="col" class="n">
                  batches
                </th>
                <th scope="col" class="n">
                  yield as is, %
                </th>
                <th scope="col" class="n">
                  yield, dry matter, %
                </th>
                <th scope="col" class="n">
                  loss, %
                </th>
                <th scope="col" class="n">
                  rootlets, %
                </th>
                <th scope="col" class="n">
                  steep and respiration, %
                </th>
                <th scope="col">malt weighed</th>
              </tr>
            </thead>
            <tbody>
              {rows.map((row) => (
                <tr>
                  <th scope="row">{row.variety}</th>
                  <td class="n">{printNumber(row.batches, 0)}</td>
                  <td class="n">{share(row.asIsYieldPercent)}</td>
                  <td class="n">{share(row.dryMatterYieldPercent)}</td>
                  <td class="n">{share(row.lossPercent)}</td>
                  <td class="n">{share(row.rootletsPercent)}</td>
                  <td class="n">{share(row.steepAndRespirationPercent)}</td>
                  <td class="basis">{row.basis}</td>
                </tr>
              ))}
            </tbody>
          </table>
        </Scroll>
      </div>
    </Entry>
  );
}
