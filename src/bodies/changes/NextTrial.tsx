import { measureWords } from "../../findings/changes/changeWords.ts";
import { runsWanted, trialSentence } from "../../findings/changes/trialSentences.ts";
import type { TrialPlan } from "../../report/changesResult.ts";
import type { TrialAnswer } from "../../report/trialAnswer.ts";
import { changeUnit, printSize } from "../../units/measureChange.ts";
import { useBody, useUnits } from "../context.ts";
import { Entry } from "../Entry.tsx";
import { changesPage } from "../pageNames.ts";
import { Said } from "../Said.tsx";
import { Scroll } from "../Scroll.tsx";

interface NextTrialProps {
  readonly plans: readonly TrialPlan[];
  readonly answer: TrialAnswer | null;
}

function Asked({ plans, answer }: NextTrialProps) {
  const { view, hrefTo } = useBody();
  const units = useUnits();
  const chosen = plans.find(({ measure }) => measure === view.trial.measure) ?? plans[0];
  if (chosen === undefined || answer === null) return null;
  const usual = answer.kind === "runs" ? String(answer.row.difference) : "";
  return (
    <>
      <form method="get" action={hrefTo(changesPage.path)} class="find needs-scripting" data-form="what-if">
        <div class="field">
          <label for="trial-measure">Measure</label>
          <select id="trial-measure" name="measure" data-control="measure" value={chosen.measure}>
            {plans.map(({ measure }) => (
              <option value={measure}>{measureWords(measure)}</option>
            ))}
          </select>
        </div>
        <div class="field">
          <label for="trial-difference">Difference to tell</label>
          <span class="entered">
            <input
              id="trial-difference"
              name="difference"
              data-control="difference"
              type="text"
              inputMode="decimal"
              autoComplete="off"
              value={view.trial.difference ?? usual}
              aria-describedby="trial-unit"
              {...(answer.kind === "refusal" ? { "aria-invalid": "true" } : {})}
            />
            <span class="unit" id="trial-unit">
              {changeUnit(chosen.measure, units) || "of the kernel’s length"}
            </span>
          </span>
        </div>
      </form>
      <p class={answer.kind === "refusal" ? "refusal" : "lede-strong"} role="status">
        <Said sentence={trialSentence(answer, units)} />
      </p>
    </>
  );
}

/** How many runs the next trial would take, at the house's own spread. */
export function NextTrial({ plans, answer }: NextTrialProps) {
  const units = useUnits();
  if (plans.length === 0) return null;
  const title = "Runs needed on each side, before and after";
  return (
    <Entry id="next-trial" title="The next trial" note="Before you change anything: how many runs would tell?">
      <Asked plans={plans} answer={answer} />
      <Scroll label={title}>
        <table class="compact">
          <caption>{title}</caption>
          <thead>
            <tr>
              <th scope="col">measure</th>
              <th scope="col" class="n">
                spread between runs
              </th>
              <th scope="col" class="n">
                difference
              </th>
              <th scope="col" class="n">
                runs each side
              </th>
              <th scope="col" class="n">
                to be surer
              </th>
            </tr>
          </thead>
          <tbody>
            {plans.flatMap(({ measure, spread, rows }) =>
              rows.map(({ difference, runsEachSide80, runsEachSide90 }, at) => (
                <tr>
                  <th scope="row">
                    {at === 0 ? measureWords(measure) : <span class="visually-hidden">{measureWords(measure)}</span>}
                  </th>
                  <td class="n">{at === 0 ? printSize(measure, spread, units) : ""}</td>
                  <td class="n">{printSize(measure, difference, units)}</td>
                  <td class="n">{runsWanted(runsEachSide80)}</td>
                  <td class="n">{runsWanted(runsEachSide90)}</td>
                </tr>
              )),
            )}
          </tbody>
        </table>
      </Scroll>
      <p class="table-note">
        Runs for which a difference of that size would be told four times in five; to be surer, nine times in ten
        (two-sided t test at 5&nbsp;%). The spread is this house’s own, with weather, variety and bed depth taken out,
        in stretches where nothing was changed and nothing was about to be mended. Change one thing at a time, and swap
        back and forth rather than once where that can be done: then season and grain stand on both sides.
      </p>
    </Entry>
  );
}
