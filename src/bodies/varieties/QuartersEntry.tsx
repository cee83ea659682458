import { columnWords } from "../../findings/varieties/columnWords.ts";
import { holdsUp, quartersSentence } from "../../findings/varieties/quarterSentences.ts";
import type { QuarterDifference, VarietyDetail } from "../../report/varietiesResult.ts";
import { type PrintOptions, print, printPValue } from "../../units/print.ts";
import { shownAs } from "../../units/quantity.ts";
import type { UnitSystem } from "../../units/unitSystem.ts";
import { useUnits } from "../context.ts";
import { Entry } from "../Entry.tsx";
import { Fold } from "../Fold.tsx";
import { Said } from "../Said.tsx";
import { Scroll } from "../Scroll.tsx";

function cellsOf(
  { column, best, worst, difference, p, correctedP }: QuarterDifference,
  units: UnitSystem,
): readonly string[] {
  const { quantity, difference: differenceQuantity } = columnWords(column);
  const options: PrintOptions = { bare: true, decimals: shownAs(quantity, units).decimals + 1 };
  const by = (value: number): string => print(value, differenceQuantity, units, { ...options, signed: true });
  return [
    print(best, quantity, units, options),
    print(worst, quantity, units, options),
    `${by(difference.estimate)} (${by(difference.low)} to ${by(difference.high)})`,
    printPValue(p),
    printPValue(correctedP),
  ];
}

function heading(column: string, units: UnitSystem): string {
  const { words, quantity } = columnWords(column);
  const { unit } = shownAs(quantity, units);
  return unit === "" ? words : `${words}, ${unit}`;
}

function Table({ differences }: { readonly differences: readonly QuarterDifference[] }) {
  const units = useUnits();
  const label = "The best quarter of the batches against the worst";
  return (
    <Scroll label={label}>
      <table class="compact runs-table">
        <caption class="visually-hidden">{label}</caption>
        <thead>
          <tr>
            <th scope="col">column</th>
            {["best quarter", "worst quarter", "difference, 95 % interval", "p", "p corrected"].map((text) => (
              <th scope="col" class="n">
                {text}
              </th>
            ))}
          </tr>
        </thead>
        <tbody>
          {differences.map((difference) => (
            <tr key={difference.column}>
              <th scope="row">{heading(difference.column, units)}</th>
              {cellsOf(difference, units).map((text) => (
                <td class="n">{text}</td>
              ))}
            </tr>
          ))}
        </tbody>
      </table>
    </Scroll>
  );
}

/** What differs between a variety's best and worst quarter of batches: what holds up stands open, the rest folded. */
export function QuartersEntry({ detail }: { readonly detail: VarietyDetail }) {
  const { quarters } = detail;
  if (quarters === null) return null;
  const sure = quarters.differences.filter(holdsUp);
  const rest = quarters.differences.filter((one) => !holdsUp(one));
  return (
    <Entry id="quarters" title="Best and worst quarter" note="Of the batches, by how well they met their tolerances.">
      <p>
        <Said sentence={quartersSentence(detail)} />
      </p>
      {sure.length === 0 ? null : <Table differences={sure} />}
      {rest.length === 0 ? null : (
        <Fold summary={sure.length === 0 ? "All columns that were looked at" : "The other columns"}>
          <Table differences={rest} />
        </Fold>
      )}
    </Entry>
  );
}
