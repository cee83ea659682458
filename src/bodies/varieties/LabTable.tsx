import { extractAsIsOf, type MethodGroup, methodName } from "../../findings/varieties/labSentences.ts";
import type { LabRow } from "../../report/varietiesResult.ts";
import { printDate } from "../../units/instant.ts";
import { laboratoryMeasures, maltMeasure, measureWithUnit, printMeasure } from "../../units/maltMeasure.ts";
import { useBody, useUnits } from "../context.ts";
import { RunLink } from "../RunLink.tsx";
import { Scroll } from "../Scroll.tsx";

/** A page lists no more certificates than this; the rest are counted. */
const MOST = 100;
const NOT_TESTED = "not tested";

/** Every certificate of one set of methods, the latest first; what was left blank was not tested. */
export function LabTable({ group }: { readonly group: MethodGroup }) {
  const { house } = useBody();
  const units = useUnits();
  const rows = group.rows.slice(-MOST).toReversed();
  // A column that no certificate has is no blank worth a place.
  const columns = laboratoryMeasures.filter((name) => group.rows.some(({ values }) => (values[name] ?? null) !== null));
  const withAsIs = group.rows.some((row) => extractAsIsOf(row) !== null);
  const extract = maltMeasure("extract_fine_dry_pct");
  const cell = (row: LabRow, name: string): string => {
    const value = row.values[name] ?? null;
    return value === null ? NOT_TESTED : printMeasure(maltMeasure(name), value, units, { bare: true });
  };
  const asIs = (row: LabRow): string => {
    const value = extractAsIsOf(row);
    return value === null ? NOT_TESTED : printMeasure(extract, value, units, { bare: true });
  };
  const label = `Certificates by ${methodName(group)}, the latest first`;
  return (
    <>
      <Scroll label={label}>
        <table class="compact runs-table">
          <caption>{label}</caption>
          <thead>
            <tr>
              <th scope="col">batch</th>
              <th scope="col">tested</th>
              {columns.map((name) => (
                <th scope="col" class="n">
                  {measureWithUnit(maltMeasure(name), units)}
                </th>
              ))}
              {withAsIs ? (
                <th scope="col" class="n">
                  extract as is, %
                </th>
              ) : null}
            </tr>
          </thead>
          <tbody>
            {rows.map((row) => (
              <tr key={`${row.run} ${row.testedOn}`}>
                <th scope="row" class="keep">
                  <RunLink run={row.run} />
                </th>
                <td class="keep">{printDate(row.testedOn, house.timeZone)}</td>
                {columns.map((name) => (
                  <td class="n">{cell(row, name)}</td>
                ))}
                {withAsIs ? <td class="n">{asIs(row)}</td> : null}
              </tr>
            ))}
          </tbody>
        </table>
      </Scroll>
      {group.rows.length > MOST ? <p class="table-note">{`The latest ${MOST} of ${group.rows.length}.`}</p> : null}
    </>
  );
}
