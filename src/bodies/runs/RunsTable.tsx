import type { RunRow } from "../../report/runRow.ts";
import { printDate } from "../../units/instant.ts";
import { shownAs } from "../../units/quantity.ts";
import { useBody, useUnits } from "../context.ts";
import { runsPage } from "../pageNames.ts";
import { NOT_LOGGED, printed } from "../printed.ts";
import { RowGroups } from "../RowGroups.tsx";
import { RunLink } from "../RunLink.tsx";
import { Scroll } from "../Scroll.tsx";
import { withQuery } from "../withQuery.ts";
import { nextSort, type Sort, type SortKey } from "./runsOrder.ts";

interface Heading {
  readonly key: SortKey;
  readonly label: string;
  readonly numeric: boolean;
}

/** Where a batch is that no kiln has had yet. */
function placeNow(row: RunRow): string {
  if (row.germinationEndedAt !== null) return "off the floor";
  if (row.germinationStartedAt !== null) return "germinating";
  return row.steepStartedAt === null ? NOT_LOGGED : "in steep";
}

/** One batch a row. Each heading is a link that sorts by it. */
export function RunsTable({ rows, sort }: { readonly rows: readonly RunRow[]; readonly sort: Sort | null }) {
  const { house, hrefTo } = useBody();
  const units = useUnits();
  const bare = { bare: true } as const;
  const headings: readonly Heading[] = [
    { key: "run", label: "batch", numeric: false },
    { key: "loaded", label: "into the kiln", numeric: false },
    { key: "hours", label: "kiln hours", numeric: true },
    { key: "moisture", label: "moisture, %", numeric: true },
    { key: "yield", label: "dry yield, %", numeric: true },
    { key: "depth", label: `bed, ${shownAs("bedDepth", units).unit}`, numeric: true },
    { key: "grain", label: `grain, ${shownAs("mass", units).unit}`, numeric: true },
    { key: "variety", label: "variety", numeric: false },
    { key: "lot", label: "lot", numeric: false },
  ];
  const label = "Batches, one a row";
  return (
    <Scroll label={label}>
      <table class="runs-table">
        <caption class="visually-hidden">{label}</caption>
        <thead>
          <tr>
            {headings.map(({ key, label: text, numeric }) => {
              const here = sort?.key === key;
              return (
                <th
                  scope="col"
                  class={numeric ? "n" : undefined}
                  aria-sort={here ? (sort.descending ? "descending" : "ascending") : undefined}
                >
                  <a href={withQuery(hrefTo(runsPage.path), "sort", nextSort(sort, key))}>{text}</a>
                  {here ? <span aria-hidden="true">{sort.descending ? " ↓" : " ↑"}</span> : null}
                </th>
              );
            })}
          </tr>
        </thead>
        <RowGroups
          id="runs"
          rows={rows}
          row={(row) => (
            <tr key={row.run}>
              <th scope="row" class="keep">
                <RunLink run={row.run} />
              </th>
              <td class="keep">{row.loadedAt === null ? placeNow(row) : printDate(row.loadedAt, house.timeZone)}</td>
              <td class="n">{printed(row.kilnHours, "hours", units, bare)}</td>
              <td class="n">{printed(row.finalMoisturePercent, "percent", units, bare)}</td>
              <td class="n">{printed(row.dryMatterYieldPercent, "percent", units, bare)}</td>
              <td class="n">{printed(row.bedDepthMetres, "bedDepth", units, bare)}</td>
              <td class="n">{printed(row.grainInKilograms, "mass", units, bare)}</td>
              <td class="keep">{row.variety ?? NOT_LOGGED}</td>
              <td class="keep">{row.lots ?? row.lot ?? NOT_LOGGED}</td>
            </tr>
          )}
        />
      </table>
    </Scroll>
  );
}
