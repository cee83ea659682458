import { tableDeclarations } from "../../tables/tableDeclarations.ts";

const folders = new Set(
  tableDeclarations.flatMap(({ place }) => (place.endsWith("/") ? [place.slice(0, -1).toLowerCase()] : [])),
);

const folderOf = (path: string): string => path.slice(0, path.lastIndexOf("/") + 1);

/**
 * The folder that the logs lie in, as a reader chose them, with its closing slash: where house.toml is, else the innermost
 * folder that holds them all. `readings` and its like are part of the logs and never that folder.
 */
export function logsRoot(paths: readonly string[]): string {
  const settings = paths
    .filter((path) => /(^|\/)house\.toml$/.test(path))
    .sort((a, b) => a.split("/").length - b.split("/").length || (a < b ? -1 : 1))[0];
  if (settings !== undefined) return folderOf(settings);
  const [first = "", ...others] = paths;
  let root = folderOf(first);
  while (!others.every((path) => path.startsWith(root))) root = folderOf(root.slice(0, -1));
  const inner = root.split("/").findIndex((folder) => folders.has(folder.toLowerCase()));
  return inner < 0 ? root : root.split("/").slice(0, inner).join("/") + (inner === 0 ? "" : "/");
}
