import { joinSentences } from "../../findings/sentence.ts";
import { alarmSentence, changeSentence, explainingTests } from "../../findings/stretchSentences.ts";
import { holdTitle } from "../../findings/thermostatWords.ts";
import type { KilnThermostat } from "../../report/thermostatResult.ts";
import { printNumber } from "../../units/print.ts";
import { Entry } from "../Entry.tsx";
import { Fold } from "../Fold.tsx";
import { Said } from "../Said.tsx";
import { Scroll } from "../Scroll.tsx";
import { useReader } from "./useReader.ts";

const MODEL = { constant: "no change", step: "one step", creep: "flat, then a creep" } as const;

/** How the three stories of the latest stretches compare, for whoever wants to check. */
function Scores({ kilns }: { readonly kilns: readonly KilnThermostat[] }) {
  const reader = useReader();
  const judged = kilns.flatMap((kiln) =>
    [kiln.drying, kiln.cure].flatMap((judgement) => {
      const stretch = judgement?.stretches.at(-1);
      const models = stretch?.models ?? null;
      if (judgement === null || stretch === undefined || models === null) return [];
      return [
        {
          stretch,
          name: `${kilns.length > 1 ? `Kiln ${kiln.kiln}, ` : ""}${holdTitle[judgement.hold].toLowerCase()}`,
          models,
        },
      ];
    }),
  );
  if (judged.length === 0) return null;
  const title = "The three stories compared, on the latest stretch";
  return (
    <>
      <Scroll label={title}>
        <table class="compact">
          <caption>{title}</caption>
          <thead>
            <tr>
              <th scope="col">hold</th>
              <th scope="col">story</th>
              <th scope="col" class="n">
                parameters
              </th>
              <th scope="col" class="n">
                residual squares
              </th>
              <th scope="col" class="n">
                BIC
              </th>
            </tr>
          </thead>
          <tbody>
            {judged.flatMap(({ name, models }) =>
              models.scores.map(({ model, parameters, residualSquares, bic }) => (
                <tr>
                  <th scope="row">{name}</th>
                  <td>{MODEL[model]}</td>
                  <td class="n">{printNumber(parameters, 0)}</td>
                  <td class="n">{printNumber(residualSquares, 2)}</td>
                  <td class="n">{printNumber(bic, 1)}</td>
                </tr>
              )),
            )}
          </tbody>
        </table>
      </Scroll>
      {judged.map(({ name, stretch, models }) => (
        <p class="small">
          {`${name}: `}
          <Said
            sentence={joinSentences([
              alarmSentence(stretch, reader.timeZone),
              changeSentence(models, reader),
              explainingTests(models, reader.timeZone),
            ])}
          />
        </p>
      ))}
    </>
  );
}

/** What the page is made of, for whoever wants to check it; folded for everyone else. */
export function ThermostatWorkedOut({ kilns }: { readonly kilns: readonly KilnThermostat[] }) {
  return (
    <Entry id="worked-out" title="How this was worked out">
      <Fold summary="Whole cycles, duty, alarms, and why a step is not called a drift">
        <div class="prose">
          <p>
            <b>Whole cycles.</b> An on/off thermostat swings the air about its set point, so a mean over a bit more than
            whole cycles leans to one side. The offset is the time mean from switch to switch, whole cycles only, less
            the set point. It holds with readings up to 2 minutes apart where a cycle takes 5. Turning points would not
            do: sparse readings miss them.
          </p>
          <p>
            <b>Heater on (duty).</b> Air goes on rising for a while after the heater is off and falling after it is on,
            so the middle moves a little with the heater’s power and the share of time that it is on. And a heater that
            is nearly always on creeps up to the upper switch point, so that the mean leans that way. Both follow from
            the share by the physics of the cycle; they are fitted to these loads, and offsets are compared at the usual
            share. A hold in which the heater could not satisfy the thermostat says nothing about the thermostat: no
            offset is claimed for it.
          </p>
          <p>
            <b>Eight readings a cycle.</b> Swing, switch points and period are given only where each cycle has at least
            8 readings; fewer cut the peaks off. No smoothing is done below 20.
          </p>
          <p>
            <b>What alarms.</b> Two charts against the first loads after the last calibration or repair: a running mean
            that weighs the latest load by one fifth (EWMA), and cumulative sums (CUSUM; both by the NIST/SEMATECH
            e-Handbook, 6.3.2.3 and 6.3.2.4), with limits widened for the few loads they rest on. An alarm stands until
            work on the thermostat is logged. Without such work it ends after 10 loads on end with the running mean back
            inside and nothing more to count to it: a thermostat does not mend itself, so look then at the season, the
            logger and the air.
          </p>
          <p>
            <b>What only explains.</b> Mann–Kendall and Pettitt tests, and the slope by Theil and Sen. Asked again at 5
            in 100 after every load, Mann–Kendall’s flags about 5 of 10 quiet stretches within 100 loads and Pettitt’s
            2, where the two charts together alarm in 3 (our own simulation of 200 houses where nothing happens, which{" "}
            <code>npm run bench -- drift</code> prints); so the tests raise no alarm.
          </p>
          <p>
            <b>Why a step is not called a drift.</b> A straight line through a step has a slope too, and would foretell
            a date that never comes. So three stories are compared: no change, one step, level and then a creep, by BIC,
            where the date of the change counts as a parameter. A lead of 6 is called clear (Kass and Raftery, 1995,
            from memory). Where it is smaller both are named.
          </p>
          <p>
            <b>Leaving the tolerance.</b> From the interval of onset, level and slope taken together, as if the creep
            went on as it went; with the logger’s own uncertainty where offsets are errors. These intervals are widened
            for what each check of the logger may itself be off by, since two checks that err in opposite ways look like
            a creep between them, and where neighbouring loads are alike beyond the change.
          </p>
          <p>
            <b>The logger.</b> Checks correct it in proportion to time between them, in one step where work on it is
            logged. An ice point alone corrects nothing hot: it says that something is off, not what a reading 50 to 80
            degrees above it is worth. Standards for new sensors do not hold for used ones. Bed and air off are asked
            beside it: air that leaves a wet bed stands near the wet bulb of the air that entered, so it follows a
            thermostat that moves and not a probe that only reads otherwise.
          </p>
          <Scores kilns={kilns} />
        </div>
      </Fold>
    </Entry>
  );
}
