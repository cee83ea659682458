import type { LoadRow } from "../../report/loadRow.ts";
import { printDate } from "../../units/instant.ts";
import { useBody, useUnits } from "../context.ts";
import { Entry } from "../Entry.tsx";
import { Fold } from "../Fold.tsx";
import { RunLinks } from "../RunLink.tsx";
import { Scroll } from "../Scroll.tsx";
import type { KilnPlace } from "./kilnPlace.ts";
import { loadColumns } from "./thermostatRows.ts";

/** A page lists no more loads than this; the rest are counted. */
const MOST = 200;

interface ThermostatLoadsProps extends KilnPlace {
  readonly rows: ReadonlyMap<string, LoadRow>;
  /** Address of the table, for the figures above. */
  readonly tableId: string;
}

/** Every load of a kiln with all that the figures draw of it. */
export function ThermostatLoads({ kiln, suffix, note, rows, tableId }: ThermostatLoadsProps) {
  const { house } = useBody();
  const units = useUnits();
  const { loads } = kiln;
  if (loads.length === 0) return null;
  const shown = loads.slice(-MOST).toReversed();
  const groups = loadColumns(kiln, units);
  const columns = groups.flatMap((group) => group.columns);
  const label = `Loads behind this page${note === undefined ? "" : `, ${note.toLowerCase()}`}`;
  const cut = loads.length > MOST;
  const notes = [note, cut ? `The latest ${MOST} of ${loads.length}; the charts used them all.` : undefined].filter(
    (one) => one !== undefined,
  );
  return (
    <Entry
      id={`loads-behind${suffix}`}
      title="The loads behind it"
      note={notes.length === 0 ? undefined : notes.join(". ")}
    >
      <Fold
        summary={`The ${cut ? `latest ${MOST}` : loads.length} ${loads.length === 1 ? "load" : "loads"}, one by one`}
      >
        {/* A link to a place inside a fold opens it. */}
        <p id={tableId} class="small">
          {`${label}, the latest first.`}
        </p>
        <Scroll label={label}>
          <table class="compact runs-table">
            <caption class="visually-hidden">{label}</caption>
            <thead>
              <tr>
                <td colSpan={2} />
                {groups.map(({ heading, columns: own }) => (
                  <th scope="colgroup" colSpan={own.length}>
                    {heading}
                  </th>
                ))}
              </tr>
              <tr>
                <th scope="col">batch</th>
                <th scope="col">loaded</th>
                {columns.map((column) => (
                  <th scope="col" class="n">
                    {column.label}
                  </th>
                ))}
              </tr>
            </thead>
            <tbody>
              {shown.map((load) => (
                <tr key={load.load}>
                  <th scope="row" class="keep">
                    <RunLinks runs={rows.get(load.load)?.runs ?? []} />
                  </th>
                  <td class="keep">{printDate(load.loadedAt, house.timeZone)}</td>
                  {columns.map(({ cell }) => (
                    <td class="n">{cell(load)}</td>
                  ))}
                </tr>
              ))}
            </tbody>
          </table>
        </Scroll>
        <p class="table-note">
          {kiln.probeAtBulb
            ? "Offset: time mean over whole cycles less the set point, corrected for the logger. "
            : "Change: time mean over whole cycles less the set point, from the level of its stretch before any change. "}
          ±: its standard error. Swing and cycle only at 8 or more readings a cycle. A dash: not recorded, or not to be
          told from these readings.
        </p>
      </Fold>
    </Entry>
  );
}
