import { modelName } from "../../findings/bestModel.ts";
import type { DryingAirModel, HumidityDepthModel } from "../../report/kilnHoursResult.ts";
import { printDate } from "../../units/instant.ts";
import { print } from "../../units/print.ts";
import { shownAs } from "../../units/quantity.ts";
import { useBody, useUnits } from "../context.ts";
import { Entry } from "../Entry.tsx";
import { Fold } from "../Fold.tsx";
import { RowGroups } from "../RowGroups.tsx";
import { RunLinks } from "../RunLink.tsx";
import { Scroll } from "../Scroll.tsx";

/** A page lists no more loads than this; the rest are counted. */
const MOST = 200;

/** Every load of the fit with what went in and what came out: the numbers under the page's figures. */
export function LoadsBehind({ model }: { readonly model: HumidityDepthModel | DryingAirModel }) {
  const { house, view } = useBody();
  const { loads } = model;
  const units = useUnits();
  const shown = loads.slice(-MOST).reverse();
  const bare = { bare: true } as const;
  const label = "Loads behind this page";
  return (
    <Entry
      id="loads-behind"
      title="The loads behind it"
      note={`Expected by ${modelName(model)}.${loads.length > MOST ? ` The latest ${MOST} of ${loads.length}; the fit used them all.` : ""}`}
    >
      <Fold
        summary={`The ${loads.length > MOST ? `latest ${MOST}` : loads.length} loads, one by one; leave single ones out here`}
      >
        {/* A link to a place inside a fold opens it. */}
        <p id="every-load" class="small needs-scripting" data-slot="progress" />
        <Scroll label={label}>
          <table class="compact runs-table">
            <caption class="visually-hidden">{label}</caption>
            <thead>
              <tr>
                <th scope="col">batch</th>
                <th scope="col">loaded</th>
                <th scope="col">variety</th>
                <th scope="col" class="n">
                  humidity, %
                </th>
                <th scope="col" class="n">{`bed, ${shownAs("bedDepth", units).unit}`}</th>
                <th scope="col" class="n">
                  hours
                </th>
                <th scope="col" class="n">
                  expected
                </th>
                <th scope="col" class="n">
                  over
                </th>
                <th scope="col" class="needs-scripting">
                  leave out
                </th>
              </tr>
            </thead>
            <RowGroups
              id="loads"
              rows={shown}
              row={(load) => (
                <tr key={load.load}>
                  <th scope="row" class="keep">
                    <RunLinks runs={load.runs} />
                  </th>
                  <td class="keep">{printDate(load.loadedAt, house.timeZone)}</td>
                  <td>{load.variety ?? "several"}</td>
                  <td class="n">{print(load.relativeHumidityPercent, "percent", units, { ...bare, decimals: 0 })}</td>
                  <td class="n">{print(load.bedDepthMetres, "bedDepth", units, bare)}</td>
                  <td class="n">{print(load.hours, "hours", units, bare)}</td>
                  <td class="n">{print(load.fittedHours, "hours", units, bare)}</td>
                  <td class="n">{print(load.residualHours, "hours", units, { ...bare, signed: true })}</td>
                  <td class="needs-scripting">
                    {load.runs.map((run) => (
                      <input
                        type="checkbox"
                        data-control="without"
                        value={run}
                        checked={view.without.includes(run)}
                        aria-label={`leave out ${run}`}
                      />
                    ))}
                  </td>
                </tr>
              )}
            />
          </table>
        </Scroll>
      </Fold>
    </Entry>
  );
}
