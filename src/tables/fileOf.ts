import type { TableName } from "./declarations.ts";
import type { FileDeclaration, House } from "./house.ts";
import { tableDeclarations } from "./tableDeclarations.ts";

/** The table a file belongs to by its place in the logs folder; null for a file that the format does not know. */
export function tableOfFile(path: string): TableName | null {
  for (const { name, place } of tableDeclarations) {
    if (path === place) return name;
    if (place.endsWith("/") && path.startsWith(place) && /\.(csv|tsv|txt)$/i.test(path) && !/(^|\/)[.~]/.test(path)) {
      return name;
    }
  }
  return null;
}

/** A README, and hidden files and locks that systems and spreadsheets leave about; nobody means them as logs. */
export function isLitter(path: string): boolean {
  return /(^|\/)(\.|~\$|Thumbs\.db$|desktop\.ini$|README(\.md|\.txt)?$)/.test(path);
}

const plain = (text: string): string => text.toLowerCase().replaceAll(/[\s_]+/g, "-");

/** What to say of a file that the format does not know. */
export function unknownFileHint(path: string): string {
  const near = tableDeclarations.find(({ place }) =>
    place.endsWith("/") ? plain(path) === `${plain(place.slice(0, -1))}.csv` : plain(path) === place,
  );
  if (near) return `If this is the ${near.name} log, name it ${near.place} exactly.`;
  return "See data/README.md for the names of the log files; anything else is left alone.";
}

const nothingDeclared: FileDeclaration = { encoding: null, delimiter: null, decimal: null, dateOrder: null };

/** What house.toml declares of a file: by its own path, else by its folder (`readings/`). */
export function declaredOf(house: House, path: string): FileDeclaration {
  const own = house.files.get(path);
  if (own) return own;
  const folder = path.includes("/") ? `${path.split("/")[0]}/` : null;
  return (folder === null ? undefined : house.files.get(folder)) ?? nothingDeclared;
}
