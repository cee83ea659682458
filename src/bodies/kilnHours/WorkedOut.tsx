import { counted } from "../../findings/counted.ts";
import type { DryingAirModel, HoursAnalysis } from "../../report/kilnHoursResult.ts";
import { print, printNumber } from "../../units/print.ts";
import { Entry } from "../Entry.tsx";
import { Fold } from "../Fold.tsx";
import { Scroll } from "../Scroll.tsx";
import { printedTermName } from "./termName.ts";
import { diagnosticsOf } from "./workedOut.ts";

type Model = NonNullable<HoursAnalysis["humidityDepth"]> | NonNullable<HoursAnalysis["dryingAir"]>;

function Coefficients({ model }: { readonly model: Model }) {
  const label = "Coefficients as fitted, in the units kept inside";
  return (
    <Scroll label={label}>
      <table class="compact">
        <caption class="small">{label}</caption>
        <thead>
          <tr>
            <th scope="col">term</th>
            {["estimate", "s.e.", "t", "95 % low", "high", "s.e. HC3", "VIF"].map((heading) => (
              <th scope="col" class="n">
                {heading}
              </th>
            ))}
          </tr>
        </thead>
        <tbody>
          {model.fit.terms.map((term) => (
            <tr>
              <th scope="row">{printedTermName(term.name)}</th>
              {[term.estimate, term.standardError].map((value) => (
                <td class="n">{printNumber(value, 4)}</td>
              ))}
              <td class="n">{printNumber(term.t, 2)}</td>
              {[term.low, term.high, term.robustStandardError].map((value) => (
                <td class="n">{printNumber(value, 4)}</td>
              ))}
              <td class="n">{term.varianceInflation === null ? "" : printNumber(term.varianceInflation, 2)}</td>
            </tr>
          ))}
        </tbody>
      </table>
    </Scroll>
  );
}

function Diagnostics({ model, title }: { readonly model: Model; readonly title: string }) {
  return (
    <div class="prose">
      <h3>{title}</h3>
      <Coefficients model={model} />
      <dl class="facts">
        {diagnosticsOf(
          model.fit,
          model.loads.map(({ load }) => load),
        ).map(({ term, value, why }) => (
          <div>
            <dt>{term}</dt>
            <dd>{value}</dd>
            <dd class="why">{why}</dd>
          </div>
        ))}
      </dl>
    </div>
  );
}

/** What a fan that stood still for part of a hold did to the air that is counted; how the coming load's fan is thought to run. */
function fanSentence({ loadsWithFanStops, filling }: DryingAirModel): string {
  const { fanShareOfHold } = filling;
  if (loadsWithFanStops === 0 && fanShareOfHold >= 0.99) {
    return "The fan counts as running throughout: no load’s readings say that it stood still in the hold.";
  }
  return (
    `In ${counted(loadsWithFanStops, "load")} the readings’ fan_on says that the fan stood still for part of the hold; the air needed is divided by the share in which it ran. ` +
    `The estimate for a coming load takes the fan to run for ${print(fanShareOfHold * 100, "percent", "metric", { decimals: 0 })} of the hold, as in the latest loads.`
  );
}

/** Where the expert finds what the page rests on; folded for everyone else. */
export function WorkedOut({ analysis }: { readonly analysis: HoursAnalysis }) {
  const { humidityDepth, dryingAir, guesses } = analysis;
  if (humidityDepth === null) return null;
  const lead = guesses?.bestOverSecond ?? null;
  return (
    <Entry id="worked-out" title="How this was worked out">
      <Fold summary="The fits, and what speaks for and against them">
        <div class="prose">
          <p>
            Ordinary least squares of kiln hours on relative humidity and bed depth. Loads in which the heater could not
            keep up are left out, as are those without air, depth or times. Beside it the drying-air model: hours on the
            dry air that the water needs (water to remove over the gap between the humidity ratio of air saturated
            adiabatically in the bed and that of the air drawn in), and bed depth.
          </p>
          {lead === null ? null : (
            <p>
              {`Best guess less second, mean difference of squared one-step-ahead errors: ${printNumber(lead.estimate, 3)} h² (95 % interval ${printNumber(lead.low, 3)} to ${printNumber(lead.high, 3)}).`}
            </p>
          )}
          <Diagnostics model={humidityDepth} title="Humidity and bed depth" />
          {dryingAir === null ? null : (
            <>
              <Diagnostics model={dryingAir} title="Drying air" />
              <p class="small">
                {`One tonne of dry air that the water needs: ${print(dryingAir.hoursPerTonneOfAir.estimate, "hours", "metric", { decimals: 3 })}. Loads for which the house’s usual gain stood in for a green load or its moisture: ${dryingAir.loadsWithUsualGain}. ${fanSentence(dryingAir)}`}
              </p>
            </>
          )}
        </div>
      </Fold>
    </Entry>
  );
}
