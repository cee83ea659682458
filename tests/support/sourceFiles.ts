import { readdirSync, readFileSync } from "node:fs";
import { dirname, join, posix } from "node:path";
import { fileURLToPath } from "node:url";

export const projectRoot = fileURLToPath(new URL("../../", import.meta.url));

export interface SourceFile {
  /** From the project's root, `/` between parts: `src/tables/decode.ts`. */
  readonly path: string;
  readonly text: string;
  readonly imports: readonly Import[];
}

export interface Import {
  /** As written: `../units/print.ts`, `preact`, `node:fs`. */
  readonly specifier: string;
  readonly typeOnly: boolean;
  /** For an import from the project itself: the path from its root. */
  readonly target: string | null;
}

const STATEMENT = /^[ \t]*(?:import|export)\s+(type\s+)?(?:[^"';]*?\sfrom\s*)?["']([^"']+)["']/gm;
const DYNAMIC = /\bimport\(\s*["']([^"']+)["']\s*\)/g;

function importsOf(path: string, text: string): Import[] {
  const resolve = (specifier: string): string | null =>
    specifier.startsWith(".") ? posix.normalize(posix.join(posix.dirname(path), specifier.replace(/\?.*$/, ""))) : null;
  const found: Import[] = [];
  for (const [, type, specifier = ""] of text.matchAll(STATEMENT)) {
    found.push({ specifier, typeOnly: type !== undefined, target: resolve(specifier) });
  }
  for (const [, specifier = ""] of text.matchAll(DYNAMIC)) {
    found.push({ specifier, typeOnly: false, target: resolve(specifier) });
  }
  return found;
}

/** Every source file below `folder` whose name ends in one of `endings`. */
export function sourceFiles(folder: string, endings: readonly string[]): SourceFile[] {
  return readdirSync(join(projectRoot, folder), { recursive: true, withFileTypes: true })
    .filter((entry) => entry.isFile() && endings.some((ending) => entry.name.endsWith(ending)))
    .map((entry) => {
      const absolute = join(entry.parentPath, entry.name);
      const path = absolute.slice(projectRoot.length).replaceAll("\\", "/");
      const text = readFileSync(absolute, "utf8");
      return { path, text, imports: importsOf(path, text) };
    })
    .sort((a, b) => (a.path < b.path ? -1 : 1));
}

export const folderOf = (path: string): string => dirname(path).split("/")[1] ?? "";
