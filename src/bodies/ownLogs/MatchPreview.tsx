import { Scroll } from "../Scroll.tsx";
import type { MatchPreviewState } from "./foreignState.ts";

/** The first rows of one table as they will be read, to be held against the file. */
export function MatchPreview({ preview }: { readonly preview: MatchPreviewState }) {
  const { label, lack, columns, rows, counts, problems } = preview;
  if (lack !== null) return <p class="match-lack">{lack}</p>;
  return (
    <div class="match-preview">
      <h4>{label}</h4>
      {rows.length === 0 ? null : (
        <Scroll label={`${label}, the first rows`}>
          <table class="compact">
            <caption class="visually-hidden">{`${label}: the first rows as they will be read`}</caption>
            <thead>
              <tr>
                {columns.map((column) => (
                  <th scope="col" class={column.isNumber ? "n" : undefined}>
                    {column.label}
                    {column.unit === "" ? null : <span class="unit">{` ${column.unit}`}</span>}
                  </th>
                ))}
              </tr>
            </thead>
            <tbody>
              {rows.map((row) => (
                <tr>
                  {row.map((cell, i) => (
                    <td class={columns[i]?.isNumber ? "n" : "keep"}>{cell}</td>
                  ))}
                </tr>
              ))}
            </tbody>
          </table>
        </Scroll>
      )}
      <p class="table-note">{counts}</p>
      {problems.length === 0 ? null : (
        <ul class="match-doubts">
          {problems.map((problem) => (
            <li>{problem}</li>
          ))}
        </ul>
      )}
    </div>
  );
}
