/** Where the text begins after `count` lines; null where it does not reach so far yet and more may come. */
export function afterLines(text: string, count: number, final: boolean): number | null {
  let at = 0;
  for (let line = 0; line < count; line++) {
    const found = /\r\n|\r|\n/g;
    found.lastIndex = at;
    const end = found.exec(text);
    // A carriage return as the last character may be half of a line break.
    if (!end || (!final && end[0] === "\r" && end.index + 1 === text.length)) return final ? text.length : null;
    at = end.index + end[0].length;
  }
  return at;
}
