import type { SteepGerminationResult } from "../../report/steepGerminationResult.ts";
import { printDate } from "../../units/instant.ts";
import { print, printRange } from "../../units/print.ts";
import { shownAs } from "../../units/quantity.ts";
import type { UnitSystem } from "../../units/unitSystem.ts";
import { useBody, useUnits } from "../context.ts";
import { Entry } from "../Entry.tsx";
import { Fold } from "../Fold.tsx";
import { NOT_LOGGED, printed } from "../printed.ts";
import { RowGroups } from "../RowGroups.tsx";
import { RunLink } from "../RunLink.tsx";
import { Scroll } from "../Scroll.tsx";
import { type FloorBatch, floorBatches } from "./floorBatches.ts";

/** A page lists no more batches than this; the rest are counted. */
const MOST = 200;

const steepColumns = (degrees: string): readonly string[] => [
  `water, ${degrees}`,
  "wet, h",
  "rests, h",
  "steep-out, %",
  "target, %",
  "fitted, %",
  "meter less gain",
  "chitted, %",
];
const floorColumns = (degrees: string): readonly string[] => [
  `bed, ${degrees}`,
  "floor, h",
  "counted",
  "mean length",
  "½ to full, %",
  "under, %",
  "over, %",
];

const bare = { bare: true } as const;
const whole = { bare: true, decimals: 0 } as const;

function steepCells({ steep, fittedPercent, biasPoints }: FloorBatch, units: UnitSystem): readonly string[] {
  return [
    printed(steep?.waterCelsius ?? null, "temperature", units, bare),
    printed(steep?.wetHours ?? null, "hours", units, bare),
    printed(steep?.airRestHours ?? null, "hours", units, bare),
    printed(steep?.steepOutPercent ?? null, "percent", units, bare),
    printed(steep?.target?.target ?? null, "percent", units, bare),
    printed(fittedPercent, "percent", units, bare),
    printed(biasPoints, "percentagePoints", units, { ...bare, signed: true }),
    printed(steep?.chittedPercent ?? null, "percent", units, whole),
  ];
}

function floorCells({ acrospire }: FloorBatch, units: UnitSystem): readonly string[] {
  const mean = acrospire?.meanLength;
  return [
    printed(acrospire?.bedMeanCelsius ?? null, "temperature", units, bare),
    printed(acrospire?.hours ?? null, "hours", units, whole),
    printed(acrospire?.counted ?? null, "count", units, bare),
    mean === undefined
      ? NOT_LOGGED
      : `${print(mean.estimate, "fraction", units)} (${printRange(mean.low, mean.high, "fraction", units)})`,
    printed(acrospire?.evenPercent.estimate ?? null, "percent", units, whole),
    printed(acrospire?.undergrownPercent.estimate ?? null, "percent", units, whole),
    printed(acrospire?.overgrownPercent.estimate ?? null, "percent", units, whole),
  ];
}

/** Every batch behind the page with its steep and its floor; here one leaves single ones out. */
export function FloorBatches({ result }: { readonly result: SteepGerminationResult }) {
  const { house, view } = useBody();
  const units = useUnits();
  const batches = floorBatches(result);
  if (batches.length === 0) return null;
  const shown = batches.slice(0, MOST);
  const label = "Batches behind this page";
  const degrees = shownAs("temperature", units).unit;
  const [steepNames, floorNames] = [steepColumns(degrees), floorColumns(degrees)];
  const count = batches.length > MOST ? `latest ${MOST}` : String(batches.length);
  return (
    <Entry
      id="batches-behind"
      title="The batches behind it"
      note={batches.length > MOST ? `The latest ${MOST} of ${batches.length}; the page used them all.` : undefined}
    >
      <Fold summary={`The ${count} batches, one by one; leave single ones out here`}>
        {/* A link to a place inside a fold opens it. */}
        <p id="every-batch" class="small needs-scripting" data-slot="progress" />
        <Scroll label={label}>
          <table class="compact runs-table">
            <caption class="visually-hidden">{label}</caption>
            <thead>
              <tr>
                <td colSpan={3} />
                <th scope="colgroup" colSpan={steepNames.length}>
                  steep
                </th>
                <th scope="colgroup" colSpan={floorNames.length}>
                  germination
                </th>
                <td class="needs-scripting" />
              </tr>
              <tr>
                <th scope="col">batch</th>
                <th scope="col">into the steep</th>
                <th scope="col">variety</th>
                {[...steepNames, ...floorNames].map((name) => (
                  <th scope="col" class="n">
                    {name}
                  </th>
                ))}
                <th scope="col" class="needs-scripting">
                  leave out
                </th>
              </tr>
            </thead>
            <RowGroups
              id="batches"
              rows={shown}
              row={(batch) => (
                <tr key={batch.run}>
                  <th scope="row" class="keep">
                    <RunLink run={batch.run} />
                  </th>
                  <td class="keep">
                    {batch.steep === null ? NOT_LOGGED : printDate(batch.steep.startedAt, house.timeZone)}
                  </td>
                  <td>{batch.variety ?? NOT_LOGGED}</td>
                  {[...steepCells(batch, units), ...floorCells(batch, units)].map((text) => (
                    <td class="n">{text}</td>
                  ))}
                  <td class="needs-scripting">
                    <input
                      type="checkbox"
                      data-control="without"
                      value={batch.run}
                      checked={view.without.includes(batch.run)}
                      aria-label={`leave out ${batch.run}`}
                    />
                  </td>
                </tr>
              )}
            />
          </table>
        </Scroll>
        <p class="table-note">
          Fitted: steep-out moisture as hours and water let one expect. Meter less gain: measured moisture less moisture
          from mass gain, points. Under: kernels under half their length; over: overgrown. Mean length of the kernel,
          with what counting alone leaves open.
        </p>
      </Fold>
    </Entry>
  );
}
