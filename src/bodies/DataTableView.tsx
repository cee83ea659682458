import type { DataCell, DataTable } from "../figures/figureSpec.ts";
import { Scroll } from "./Scroll.tsx";

/** Rows up to which a folded table is printed all the same. */
const SHORT = 16;

export const isShort = (table: DataTable): boolean => table.rows.length <= SHORT;

function Cell({ cell }: { readonly cell: DataCell }) {
  if (typeof cell !== "string") return <a href={cell.href}>{cell.text}</a>;
  return <>{cell}</>;
}

/** A figure's own numbers as a table; the first cell of a row names the row. */
export function DataTableView({ table, caption }: { readonly table: DataTable; readonly caption: string }) {
  return (
    <>
      <Scroll label={caption}>
        <table class="compact">
          <caption class="visually-hidden">{caption}</caption>
          <thead>
            <tr>
              {table.columns.map(({ label, unit, numeric }) => (
                <th scope="col" class={numeric ? "n" : undefined}>
                  {unit === undefined ? label : `${label}, ${unit}`}
                </th>
              ))}
            </tr>
          </thead>
          <tbody>
            {table.rows.map((row) => (
              <tr>
                {row.map((cell, column) => {
                  const align = table.columns[column]?.numeric ? "n" : undefined;
                  return column === 0 ? (
                    <th scope="row" class={align}>
                      <Cell cell={cell} />
                    </th>
                  ) : (
                    <td class={align}>
                      <Cell cell={cell} />
                    </td>
                  );
                })}
              </tr>
            ))}
          </tbody>
        </table>
      </Scroll>
      {table.note === undefined ? null : <p class="table-note">{table.note}</p>}
    </>
  );
}
