import type { ControlChart } from "../../report/controlChartResult.ts";
import { printDate } from "../../units/instant.ts";
import { printNumber, printSigned } from "../../units/print.ts";
import { useBody } from "../context.ts";
import { Entry } from "../Entry.tsx";
import { Fold } from "../Fold.tsx";
import { NOT_LOGGED } from "../printed.ts";
import { RowGroups } from "../RowGroups.tsx";
import { RunLink } from "../RunLink.tsx";
import { Scroll } from "../Scroll.tsx";
import { type ChartedBatch, type ChartedNumbers, chartedBatches } from "./chartedBatches.ts";

/** A page lists no more batches than this; the rest are counted. */
const MOST = 200;

const YIELD_COLUMNS = ["%", "off its centre", "running mean", "sum above", "sum below", "step"];
const MOISTURE_COLUMNS = [...YIELD_COLUMNS, "samples", "spread within"];

const bare = (value: number | null | undefined, decimals: number): string =>
  value == null ? NOT_LOGGED : printNumber(value, decimals);
const signed = (value: number | null | undefined): string => (value == null ? NOT_LOGGED : printSigned(value, 2));

/** The numbers of one batch on one chart, in the order of its columns. */
function cellsOf(numbers: ChartedNumbers | null, decimals: number): readonly string[] {
  const { value, centre } = numbers?.charted ?? { value: null, centre: null };
  return [
    bare(value, decimals),
    signed(value === null || centre === null ? null : value - centre),
    signed(numbers?.runningMean),
    bare(numbers?.sumAbove, 1),
    bare(numbers?.sumBelow, 1),
    bare(numbers?.step, decimals),
  ];
}

const moistureCells = (numbers: ChartedNumbers | null): readonly string[] => [
  ...cellsOf(numbers, 2),
  bare(numbers?.charted.samples, 0),
  bare(numbers?.within, 2),
];

function baselineWords({ dryYield, moisture }: ChartedBatch): string {
  const why = dryYield?.charted.leftOut ?? moisture?.charted.leftOut ?? null;
  if (why !== null) return why;
  const of = [dryYield?.charted.inBaseline ? "yield" : null, moisture?.charted.inBaseline ? "moisture" : null].filter(
    (one) => one !== null,
  );
  return of.length === 2 ? "in both" : of.length === 1 ? `of ${of[0]}` : "";
}

function Head() {
  return (
    <thead>
      <tr>
        <td colSpan={3} />
        <th scope="colgroup" colSpan={YIELD_COLUMNS.length}>
          dry-matter yield
        </th>
        <th scope="colgroup" colSpan={MOISTURE_COLUMNS.length}>
          final moisture
        </th>
        <td />
        <td class="needs-scripting" />
      </tr>
      <tr>
        <th scope="col">batch</th>
        <th scope="col">unloaded</th>
        <th scope="col">variety</th>
        {[...YIELD_COLUMNS, ...MOISTURE_COLUMNS].map((label) => (
          <th scope="col" class="n">
            {label}
          </th>
        ))}
        <th scope="col">baseline</th>
        <th scope="col" class="needs-scripting">
          leave out
        </th>
      </tr>
    </thead>
  );
}

/** Every batch on the charts with all that the figures draw of it; here one leaves batches out of the baselines by hand. */
export function BatchesBehind({ charts }: { readonly charts: readonly ControlChart[] }) {
  const { house, view } = useBody();
  const batches = chartedBatches(charts);
  if (batches.length === 0) return null;
  const shown = batches.slice(0, MOST);
  const label = "Batches behind this page";
  const count = batches.length > MOST ? `latest ${MOST}` : String(batches.length);
  return (
    <Entry
      id="batches-behind"
      title="The batches behind it"
      note={batches.length > MOST ? `The latest ${MOST} of ${batches.length}; the charts used them all.` : undefined}
    >
      <Fold summary={`The ${count} batches, one by one; leave single ones out of the baseline here`}>
        {/* A link to a place inside a fold opens it. */}
        <p id="every-batch" class="small needs-scripting" data-slot="progress" />
        <Scroll label={label}>
          <table class="compact runs-table">
            <caption class="visually-hidden">{label}</caption>
            <Head />
            <RowGroups
              id="batches"
              rows={shown}
              row={(batch) => (
                <tr key={batch.run}>
                  <th scope="row" class="keep">
                    <RunLink run={batch.run} />
                  </th>
                  <td class="keep">{printDate(batch.at, house.timeZone)}</td>
                  <td>{batch.variety}</td>
                  {[...cellsOf(batch.dryYield, 1), ...moistureCells(batch.moisture)].map((text) => (
                    <td class="n">{text}</td>
                  ))}
                  <td class="keep">{baselineWords(batch)}</td>
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
              )}
            />
          </table>
        </Scroll>
        <p class="table-note">
          Off its centre, running mean, step from the batch before of the same variety, and spread within the batch: in
          points. Sums: in spreads of single batches.
        </p>
      </Fold>
    </Entry>
  );
}
