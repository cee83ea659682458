import type { ChartedRun, ControlChart } from "../../report/controlChartResult.ts";
import { printDate } from "../../units/instant.ts";
import { printNumber, printSigned } from "../../units/print.ts";
import { useBody } from "../context.ts";
import { Entry } from "../Entry.tsx";
import { Fold } from "../Fold.tsx";
import { NOT_LOGGED } from "../printed.ts";
import { RunLink } from "../RunLink.tsx";
import { Scroll } from "../Scroll.tsx";

/** A page lists no more batches than this; the rest are counted. */
const MOST = 200;

interface Batch {
  readonly run: string;
  readonly at: number;
  readonly variety: string;
  readonly dryYield: ChartedRun | null;
  readonly moisture: ChartedRun | null;
}

/** Batches of both charts, latest first. */
export function batchesOf(charts: readonly ControlChart[]): readonly Batch[] {
  const byRun = new Map<string, Batch>();
  for (const { measure, runs } of charts) {
    for (const charted of runs) {
      const held = byRun.get(charted.run) ?? { ...charted, dryYield: null, moisture: null };
      byRun.set(charted.run, { ...held, [measure === "dry_yield_pct" ? "dryYield" : "moisture"]: charted });
    }
  }
  return [...byRun.values()].sort((a, b) => b.at - a.at || (a.run < b.run ? 1 : -1));
}

const value = (charted: ChartedRun | null, decimals: number): string =>
  charted === null ? NOT_LOGGED : printNumber(charted.value, decimals);
const off = (charted: ChartedRun | null): string =>
  charted === null || charted.centre === null ? NOT_LOGGED : printSigned(charted.value - charted.centre, 2);

function baselineWords({ dryYield, moisture }: Batch): string {
  const why = dryYield?.leftOut ?? moisture?.leftOut ?? null;
  if (why !== null) return why;
  const of = [dryYield?.inBaseline ? "yield" : null, moisture?.inBaseline ? "moisture" : null].filter(
    (one) => one !== null,
  );
  return of.length === 2 ? "in both" : of.length === 1 ? `of ${of[0]}` : "";
}

/** Every batch on the charts with its distance from its centre: the numbers under the page's figures. */
export function BatchesBehind({ charts }: { readonly charts: readonly ControlChart[] }) {
  const { house, view } = useBody();
  const batches = batchesOf(charts);
  if (batches.length === 0) return null;
  const shown = batches.slice(0, MOST);
  const label = "Batches behind this page";
  return (
    <Entry
      id="batches-behind"
      title="The batches behind it"
      note={batches.length > MOST ? `The latest ${MOST} of ${batches.length}; the charts used them all.` : undefined}
    >
      <Fold
        summary={`The ${batches.length > MOST ? `latest ${MOST}` : batches.length} batches, one by one; leave single ones out of the baseline here`}
      >
        {/* A link to a place inside a fold opens it. */}
        <p id="every-batch" class="small needs-scripting" data-slot="progress" />
        <Scroll label={label}>
          <table class="compact runs-table">
            <caption class="visually-hidden">{label}</caption>
            <thead>
              <tr>
                <th scope="col">batch</th>
                <th scope="col">unloaded</th>
                <th scope="col">variety</th>
                <th scope="col" class="n">
                  yield, %
                </th>
                <th scope="col" class="n">
                  off its centre
                </th>
                <th scope="col" class="n">
                  moisture, %
                </th>
                <th scope="col" class="n">
                  off its centre
                </th>
                <th scope="col" class="n">
                  samples
                </th>
                <th scope="col">baseline</th>
                <th scope="col" class="needs-scripting">
                  leave out
                </th>
              </tr>
            </thead>
            <tbody>
              {shown.map((batch) => (
                <tr key={batch.run}>
                  <th scope="row" class="keep">
                    <RunLink run={batch.run} />
                  </th>
                  <td class="keep">{printDate(batch.at, house.timeZone)}</td>
                  <td>{batch.variety}</td>
                  <td class="n">{value(batch.dryYield, 1)}</td>
                  <td class="n">{off(batch.dryYield)}</td>
                  <td class="n">{value(batch.moisture, 2)}</td>
                  <td class="n">{off(batch.moisture)}</td>
                  <td class="n">{batch.moisture === null ? NOT_LOGGED : printNumber(batch.moisture.samples, 0)}</td>
                  <td>{baselineWords(batch)}</td>
                  <td class="needs-scripting">
                    <input
                      type="checkbox"
                      data-control="without"
                      value={batch.run}
                      checked={view.without.includes(batch.run)}
                      aria-label={`leave ${batch.run} out`}
                    />
                  </td>
                </tr>
              ))}
            </tbody>
          </table>
        </Scroll>
      </Fold>
    </Entry>
  );
}
