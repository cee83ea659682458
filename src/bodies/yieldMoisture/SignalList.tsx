import { countedInWords } from "../../findings/counted.ts";
import { falseSignalSentence } from "../../findings/falseSignalSentence.ts";
import { type SignalGroup, signalGroups } from "../../findings/signalGroups.ts";
import { besideSentence, raisedSentence, signalSentence } from "../../findings/signalSentence.ts";
import type { ControlChart } from "../../report/controlChartResult.ts";
import { useBody } from "../context.ts";
import { Fold } from "../Fold.tsx";
import { RunLink, RunLinks } from "../RunLink.tsx";
import { Said } from "../Said.tsx";

/** Signals that stand open; earlier ones are folded. */
const MOST = 5;
/** Up to here each batch of a signal is linked; above, the first and the last. */
const MOST_LINKS = 8;

function RunsOf({ group }: { readonly group: SignalGroup }) {
  const runs = group.runs.map(({ run }) => run);
  if (runs.length <= MOST_LINKS) return <RunLinks runs={runs} />;
  return (
    <>
      <RunLink run={runs[0] ?? ""} /> to <RunLink run={runs.at(-1) ?? ""} />
    </>
  );
}

function Signals({ groups, chart }: { readonly groups: readonly SignalGroup[]; readonly chart: ControlChart }) {
  const { house } = useBody();
  return (
    <ul class="lines">
      {groups.map((group) => (
        <li class="keep-together">
          <p>
            <Said sentence={signalSentence(group, chart.measure, house.timeZone)} />
          </p>
          <p class="small">
            {group.runs.length === 1 ? "Batch " : "Batches "}
            <RunsOf group={group} />
            {"; "}
            <Said sentence={raisedSentence(group)} />
          </p>
          <p class="small">
            <Said sentence={besideSentence(group)} />
          </p>
        </li>
      ))}
    </ul>
  );
}

/** What a chart signals, in sentences, the latest first, and what the chosen rules cost. */
export function SignalList({ chart }: { readonly chart: ControlChart }) {
  const groups = [...signalGroups(chart)].reverse();
  const earlier = groups.slice(MOST);
  return (
    <section class="prose">
      <h3>{groups.length === 0 ? "No signal" : countedInWords(groups.length, "signal")}</h3>
      {groups.length === 0 ? null : <Signals groups={groups.slice(0, MOST)} chart={chart} />}
      {earlier.length === 0 ? null : (
        <Fold summary={countedInWords(earlier.length, "earlier signal")} short={earlier.length <= MOST}>
          <Signals groups={earlier} chart={chart} />
        </Fold>
      )}
      <p class="table-note">
        <Said sentence={falseSignalSentence(chart)} />
      </p>
    </section>
  );
}
