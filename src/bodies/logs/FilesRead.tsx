import type { FileRead } from "../../report/logsResult.ts";
import { printNumber } from "../../units/print.ts";
import { Scroll } from "../Scroll.tsx";

const count = (n: number): string => printNumber(n, 0);

/** Files are listed one by one up to here; a folder that holds more becomes one row. */
const ONE_BY_ONE = 12;

/** Files that are no logs and say how logs are to be read. */
const SETTINGS: Readonly<Record<string, string>> = {
  "house.toml": ", the settings",
  "columns.toml": ", how other columns are read",
};

/** Readings and weather may come in hundreds of files: those stand in one row a folder. */
export function foldersFolded(files: readonly FileRead[]): readonly (FileRead & { readonly of: number })[] {
  const folders = new Map<string, FileRead[]>();
  for (const file of files) {
    const folder = file.path.includes("/") ? file.path.slice(0, file.path.lastIndexOf("/") + 1) : file.path;
    folders.set(folder, [...(folders.get(folder) ?? []), file]);
  }
  return [...folders].flatMap(([folder, held]) => {
    const [first] = held;
    if (first === undefined) return [];
    if (held.length <= ONE_BY_ONE) return held.map((file) => ({ ...file, of: 1 }));
    const sum = (pick: (file: FileRead) => number): number => held.reduce((total, file) => total + pick(file), 0);
    return [
      {
        path: folder,
        table: first.table,
        rows: sum((file) => file.rows),
        rowsSetAside: sum((file) => file.rowsSetAside),
        valuesBlanked: sum((file) => file.valuesBlanked),
        notes: sum((file) => file.notes),
        of: held.length,
      },
    ];
  });
}

/** What became of each file. */
export function FilesRead({ files }: { readonly files: readonly FileRead[] }) {
  const label = "Files read";
  return (
    <Scroll label={label}>
      <table class="compact">
        <caption class="visually-hidden">{label}</caption>
        <thead>
          <tr>
            <th scope="col">file</th>
            {["rows read", "rows set aside", "values left blank", "notes"].map((heading) => (
              <th scope="col" class="n">
                {heading}
              </th>
            ))}
          </tr>
        </thead>
        <tbody>
          {foldersFolded(files).map(({ path, table, rows, rowsSetAside, valuesBlanked, notes, of }) => (
            <tr>
              <th scope="row">
                {path}
                {of > 1 ? <span class="quiet">{`, ${of} files`}</span> : null}
                {table !== null && !path.toLowerCase().includes(table) ? (
                  <span class="quiet">{`, read as ${table}`}</span>
                ) : null}
                {table === null ? <span class="quiet">{SETTINGS[path] ?? ", not a log that is known"}</span> : null}
              </th>
              <td class="n">{count(rows)}</td>
              <td class="n">{rowsSetAside === 0 ? "" : <b>{count(rowsSetAside)}</b>}</td>
              <td class="n">{valuesBlanked === 0 ? "" : <b>{count(valuesBlanked)}</b>}</td>
              <td class="n">{notes === 0 ? "" : count(notes)}</td>
            </tr>
          ))}
        </tbody>
      </table>
    </Scroll>
  );
}
