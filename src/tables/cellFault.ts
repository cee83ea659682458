/** What is wrong with one value, before it is known where it stands. */
export interface CellFault {
  readonly rule: string;
  readonly message: string;
  readonly hint: string;
}

/** White space as spreadsheets write it: also the non-breaking, narrow and figure spaces, and a stray byte order mark. */
export function isSpace(code: number): boolean {
  return (
    code <= 0x20 ||
    code === 0xa0 ||
    code === 0x202f ||
    (code >= 0x2000 && code <= 0x200b) ||
    code === 0xfeff ||
    code === 0x3000
  );
}
