import {
  fillingSentence,
  leftOutOfBaseline,
  phaseSentence,
  phaseSpan,
  signalledInBaseline,
  spreadSentence,
} from "../../findings/limitSentences.ts";
import { joinSentences } from "../../findings/sentence.ts";
import type { ChartPhase, ControlChart } from "../../report/controlChartResult.ts";
import { printNumber } from "../../units/print.ts";
import { useBody } from "../context.ts";
import { Fold } from "../Fold.tsx";
import { RunLink, RunLinks } from "../RunLink.tsx";
import { Said } from "../Said.tsx";
import { Scroll } from "../Scroll.tsx";

function CentresTable({ phase, title }: { readonly phase: ChartPhase; readonly title: string }) {
  return (
    <Scroll label={title}>
      <table class="compact">
        <caption>{title}</caption>
        <thead>
          <tr>
            <th scope="col">variety</th>
            <th scope="col" class="n">
              baseline batches
            </th>
            <th scope="col" class="n">
              centre, %
            </th>
            <th scope="col" class="n">
              95&nbsp;% interval
            </th>
            <th scope="col" class="n">
              limits, %
            </th>
            <th scope="col" class="n">
              spread, points
            </th>
          </tr>
        </thead>
        <tbody>
          {phase.centres.map(({ variety, centre, sigma, reach, baselineRuns }) => (
            <tr>
              <th scope="row">{variety}</th>
              <td class="n">{printNumber(baselineRuns, 0)}</td>
              <td class="n">{printNumber(centre.estimate, 2)}</td>
              <td class="n">{`${printNumber(centre.low, 2)} to ${printNumber(centre.high, 2)}`}</td>
              <td class="n">{`${printNumber(centre.estimate - reach, 2)} to ${printNumber(centre.estimate + reach, 2)}`}</td>
              <td class="n">{printNumber(sigma.estimate, 2)}</td>
            </tr>
          ))}
        </tbody>
      </table>
    </Scroll>
  );
}

/** Where the limits come from: each phase's baseline with its first and last batch, and what was left out of it. */
export function Limits({ chart }: { readonly chart: ControlChart }) {
  const { house } = useBody();
  const leftOut = leftOutOfBaseline(chart);
  const last = chart.phases.length - 1;
  const beyond = signalledInBaseline(chart);
  return (
    <section class="prose">
      <h3>Where the limits come from</h3>
      {chart.phases.map((phase, index) => {
        const baseline = chart.runs.filter((run) => run.phase === index && run.inBaseline);
        const [from, to] = [baseline[0], baseline.at(-1)];
        return (
          <p>
            <Said sentence={phaseSentence(phase, chart.measure)} />{" "}
            {from === undefined || to === undefined ? null : (
              <>
                {"Baseline: from "}
                <RunLink run={from.run} />
                {" to "}
                <RunLink run={to.run} />
                {". "}
              </>
            )}
            <Said
              sentence={joinSentences([fillingSentence(chart, index), index === last ? spreadSentence(phase) : []])}
            />
          </p>
        );
      })}
      {beyond.length === 0 ? null : (
        <p>
          <RunLinks runs={beyond} />
          {beyond.length === 1
            ? " lies beyond the limits that it helped to set. Where its cause is found, "
            : " lie beyond the limits that they helped to set. Where a cause is found, "}
          {"log it as an incident or leave the batch out below: the limits then draw closer."}
        </p>
      )}
      {leftOut.map(({ reason, runs }) => (
        <p class="small">
          {"Charted, but in no baseline: "}
          <RunLinks runs={runs} />
          {`: ${reason}.`}
        </p>
      ))}
      <Fold summary="Centres and limits, variety by variety" short={chart.phases.length < 2}>
        {chart.phases.map((phase) =>
          phase.centres.length === 0 ? null : <CentresTable phase={phase} title={phaseSpan(phase, house.timeZone)} />,
        )}
      </Fold>
    </section>
  );
}
