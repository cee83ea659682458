import type { SteepGerminationResult } from "../../report/steepGerminationResult.ts";
import { printDate } from "../../units/instant.ts";
import { shownAs } from "../../units/quantity.ts";
import type { UnitSystem } from "../../units/unitSystem.ts";
import { useBody, useUnits } from "../context.ts";
import { Entry } from "../Entry.tsx";
import { Fold } from "../Fold.tsx";
import { NOT_LOGGED, printed } from "../printed.ts";
import { RunLink } from "../RunLink.tsx";
import { Scroll } from "../Scroll.tsx";
import { type FloorBatch, floorBatches } from "./floorBatches.ts";

/** A page lists no more batches than this; the rest are counted. */
const MOST = 200;

const STEEP_COLUMNS = (degrees: string) => [`water, ${degrees}`, "wet, h", "rests, h", "steep-out, %", "chitted, %"];
const FLOOR_COLUMNS = (degrees: string) => [
  `bed, ${degrees}`,
  "floor, h",
  "mean length",
  "½ to full, %",
  "overgrown, %",
];

function cellsOf({ steep, acrospire }: FloorBatch, units: UnitSystem): readonly string[] {
  const bare = { bare: true } as const;
  const whole = { bare: true, decimals: 0 } as const;
  return [
    printed(steep?.waterCelsius ?? null, "temperature", units, bare),
    printed(steep?.wetHours ?? null, "hours", units, bare),
    printed(steep?.airRestHours ?? null, "hours", units, bare),
    printed(steep?.steepOutPercent ?? null, "percent", units, bare),
    printed(steep?.chittedPercent ?? null, "percent", units, whole),
    printed(acrospire?.bedMeanCelsius ?? null, "temperature", units, bare),
    printed(acrospire?.hours ?? null, "hours", units, whole),
    printed(acrospire?.meanLength.estimate ?? null, "fraction", units, bare),
    printed(acrospire?.evenPercent.estimate ?? null, "percent", units, whole),
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
                <th scope="colgroup" colSpan={5}>
                  steep
                </th>
                <th scope="colgroup" colSpan={5}>
                  germination
                </th>
                <td class="needs-scripting" />
              </tr>
              <tr>
                <th scope="col">batch</th>
                <th scope="col">into the steep</th>
                <th scope="col">variety</th>
                {[...STEEP_COLUMNS(degrees), ...FLOOR_COLUMNS(degrees)].map((name) => (
                  <th scope="col" class="n">
                    {name}
                  </th>
                ))}
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
                  <td class="keep">
                    {batch.steep === null ? NOT_LOGGED : printDate(batch.steep.startedAt, house.timeZone)}
                  </td>
                  <td>{batch.variety ?? NOT_LOGGED}</td>
                  {cellsOf(batch, units).map((text) => (
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
              ))}
            </tbody>
          </table>
        </Scroll>
      </Fold>
    </Entry>
  );
}
