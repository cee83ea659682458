import type { AskTable } from "../../report/ask/askSchema.ts";
import { Fold } from "../Fold.tsx";
import { Scroll } from "../Scroll.tsx";

/** Every table that a question may name, folded, with its columns and units. */
export function AskSchema({ tables }: { readonly tables: readonly AskTable[] }) {
  return (
    <>
      {tables.map(({ name, meaning, columns }) => (
        <Fold summary={name}>
          <p>{meaning}</p>
          <Scroll label={`Columns of ${name}`}>
            <table class="compact ask-columns">
              <caption class="visually-hidden">{`Columns of ${name}`}</caption>
              <thead>
                <tr>
                  <th scope="col">column</th>
                  <th scope="col">unit</th>
                  <th scope="col">what it is</th>
                </tr>
              </thead>
              <tbody>
                {columns.map((column) => (
                  <tr>
                    <th scope="row">
                      <code>{column.name}</code>
                    </th>
                    <td>{column.unit}</td>
                    <td>{column.meaning}</td>
                  </tr>
                ))}
              </tbody>
            </table>
          </Scroll>
        </Fold>
      ))}
    </>
  );
}
