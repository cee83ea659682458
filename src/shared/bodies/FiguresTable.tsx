import { Scroll } from "../../bodies/Scroll.tsx";
import { figureLines, standingWords } from "../batchWords.ts";
import type { SharedBatch, SharedHouse } from "../sharedSite.ts";

interface FiguresTableProps {
  readonly batch: SharedBatch;
  readonly house: SharedHouse;
  /** One line a measure, its newest: for a sheet that has room for no more. */
  readonly newestOnly?: boolean;
}

/** Moisture and laboratory figures with units, method and date, against the spec of the variety. */
export function FiguresTable({ batch, house, newestOnly = false }: FiguresTableProps) {
  const { lines: all, untested } = figureLines(batch, house.units, house.timeZone);
  // Certificates come newest first.
  const lines = newestOnly
    ? all.filter(({ measure }, at) => all.findIndex((line) => line.measure === measure) === at)
    : all;
  return (
    <>
      <Scroll label="Figures against the spec">
        <table class="compact shared-figures">
          <caption class="visually-hidden">Figures against the spec</caption>
          <thead>
            <tr>
              <th scope="col">measure</th>
              <th scope="col">this batch</th>
              <th scope="col">spec</th>
              <th scope="col">it is</th>
              <th scope="col">method and date</th>
            </tr>
          </thead>
          <tbody>
            {lines.map(({ name, value, spec, standing, how }) => (
              <tr>
                <th scope="row">{name}</th>
                <td>{value}</td>
                <td>{spec === "" ? "–" : spec}</td>
                <td>
                  {standing === null ? (
                    "–"
                  ) : standing === "within" ? (
                    standingWords.within
                  ) : (
                    <b>{standingWords[standing]}</b>
                  )}
                </td>
                <td>{how === "" ? "–" : how}</td>
              </tr>
            ))}
          </tbody>
        </table>
      </Scroll>
      {untested.length === 0 ? null : <p class="table-note">{`Not tested: ${untested.join("; ")}.`}</p>}
    </>
  );
}
