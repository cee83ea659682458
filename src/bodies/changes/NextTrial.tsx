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
      <form method="get" action={hrefTo(changesPage.path)} class="choose-fields needs-scripting" data-form="what-if">
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
  const title = "Differences, and the batches or loads needed on each side to tell them";
  return (
    <Entry id="next-trial" title="The next trial" note="Before you change anything: how many batches would tell?">
      <Asked plans={plans} answer={answer} />
      <Scroll label={title}>
        <table class="compact">
          <caption>{title}</caption>
          <thead>
            <tr>
              <th scope="col">measure</th>
              <th scope="col" class="n">
                from one to the next
              </th>
              <th scope="col" class="n">
                small
              </th>
              <th scope="col" class="n">
                middling
              </th>
              <th scope="col" class="n">
                large
              </th>
            </tr>
          </thead>
          <tbody>
            {plans.map(({ measure, spread, rows }) => (
              <tr>
                <th scope="row">{measureWords(measure)}</th>
                <td class="n">{printSize(measure, spread, units)}</td>
                {rows.map(({ difference, runsEachSide80, runsEachSide90 }) => (
                  <td class="n">
                    {printSize(measure, difference, units)}
                    <br />
                    <b>{runsWanted(runsEachSide80)}</b>
                    {` (${runsWanted(runsEachSide90)})`}
                  </td>
                ))}
              </tr>
            ))}
          </tbody>
        </table>
      </Scroll>
      <p class="table-note">
        Batches or loads on each side for which a difference of that size would be told four times in five, in brackets
        nine times in ten (two-sided t test at 5&nbsp;%). The spread between them is this house’s own, with weather,
        variety and bed depth taken out, in stretches where nothing was changed and nothing was about to be mended;
        where weather or varieties differ between the sides, adjusting for them costs some more. Change one thing at a
        time, and swap back and forth rather than once where that can be done: then season and grain stand on both
        sides.
      </p>
    </Entry>
  );
}
