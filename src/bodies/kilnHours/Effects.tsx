import type { Interval, RegressionTerm } from "../../analysis/regressionFit.ts";
import { depthUnitWord, effectOfDepth } from "../../findings/kilnEffects.ts";
import type { DryingAirModel, HumidityDepthModel } from "../../report/kilnHoursResult.ts";
import { printPValue, printSigned } from "../../units/print.ts";
import { useUnits } from "../context.ts";
import { Scroll } from "../Scroll.tsx";

interface EffectRow {
  readonly what: string;
  readonly effect: Interval;
  readonly robust: readonly [number, number] | null;
  readonly p: number | null;
}

const range = (low: number, high: number): string => `${printSigned(low, 2)} to ${printSigned(high, 2)}`;

/** The HC3 interval of a term said in the steps of `effect`, which is the same term scaled. */
function robustOf(term: RegressionTerm | undefined, effect: Interval): readonly [number, number] | null {
  if (term === undefined || term.estimate === 0) return null;
  const scale = effect.estimate / term.estimate;
  return [term.robustLow * scale, term.robustHigh * scale];
}

interface EffectsProps {
  readonly model: HumidityDepthModel;
  readonly dryingAir: DryingAirModel | null;
  readonly caption: string;
}

/** Coefficients as a maltster counts them: hours for 10 points of humidity, for a centimetre or an inch of bed. */
export function Effects({ model, dryingAir, caption }: EffectsProps) {
  const units = useUnits();
  const unit = depthUnitWord(units);
  const [humidityTerm, depthTerm] = model.fit.terms.slice(1);
  const depth = effectOfDepth(model.hoursPerCentimetre, units);
  const rows: EffectRow[] = [
    {
      what: "10 points of outside humidity",
      effect: model.hoursPerTenPoints,
      robust: robustOf(humidityTerm, model.hoursPerTenPoints),
      p: humidityTerm?.p ?? null,
    },
    { what: `one ${unit} of bed`, effect: depth, robust: robustOf(depthTerm, depth), p: depthTerm?.p ?? null },
  ];
  if (dryingAir !== null) {
    rows.push({
      what: `one ${unit} of bed with its grain, same air (drying-air model)`,
      effect: effectOfDepth(dryingAir.hoursPerCentimetre, units),
      robust: null,
      p: null,
    });
  }
  return (
    <>
      <Scroll label={caption}>
        <table class="effects">
          <caption>{caption}</caption>
          <thead>
            <tr>
              <th scope="col">For</th>
              <th scope="col" class="n">
                hours
              </th>
              <th scope="col" class="n">
                95&nbsp;% interval
              </th>
              <th scope="col" class="n">
                by HC3
              </th>
              <th scope="col" class="n">
                by chance
              </th>
            </tr>
          </thead>
          <tbody>
            {rows.map(({ what, effect, robust, p }) => (
              <tr>
                <th scope="row">{what}</th>
                <td class="n">{printSigned(effect.estimate, 2)}</td>
                <td class="n">{range(effect.low, effect.high)}</td>
                <td class="n">{robust === null ? "" : range(robust[0], robust[1])}</td>
                <td class="n">{p === null ? "" : printPValue(p)}</td>
              </tr>
            ))}
            <tr>
              <th scope="row">left over, one load</th>
              <td class="n">{`±\u202f${model.fit.residualStandardDeviation.toFixed(2)}`}</td>
              <td class="n" />
              <td class="n" />
              <td class="n" />
            </tr>
          </tbody>
        </table>
      </Scroll>
      <p class="table-note">
        HC3: an interval that does not take the scatter to be even. By chance: how often loads without this effect would
        show one as large.
      </p>
    </>
  );
}
