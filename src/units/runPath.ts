const RESERVED = /^(con|prn|aux|nul|com\d|lpt\d)$/i;
const LONGEST = 100;

/** A number from a text, the same everywhere (FNV-1a, 32 bits): only to keep two long names apart. */
function shortMark(text: string): string {
  let mark = 0x811c9dc5;
  for (const byte of new TextEncoder().encode(text)) mark = Math.imul(mark ^ byte, 0x01000193) >>> 0;
  return mark.toString(16).padStart(8, "0");
}

/**
 * The folder of a run's page, whatever its id: ASCII letters, digits and inner hyphens stay, every other byte of its
 * UTF-8 becomes `~` and two hex digits. `24-117` stays, `24/117` becomes `24~2f117`; two ids never share a folder.
 *
 * @param run the id as logged, not empty
 * @throws {RangeError} when `run` is empty
 */
export function runFolder(run: string): string {
  if (run === "") throw new RangeError("runFolder requires a run id; got an empty text");
  let folder = "";
  for (const character of run) {
    if (/[A-Za-z0-9-]/.test(character)) folder += character;
    else for (const byte of new TextEncoder().encode(character)) folder += `~${byte.toString(16).padStart(2, "0")}`;
  }
  // Names that some file systems keep for themselves.
  if (RESERVED.test(folder)) folder = `~${(folder.codePointAt(0) ?? 0).toString(16)}${folder.slice(1)}`;
  return folder.length <= LONGEST ? folder : `${folder.slice(0, LONGEST - 9)}~${shortMark(run)}`;
}

/** The run's page, relative to the site's root: `runs/24-117/`. */
export function runPath(run: string): string {
  return `runs/${runFolder(run)}/`;
}
