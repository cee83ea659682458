import type { CellFault } from "./cellFault.ts";
import { type DecimalMark, mayBeThousands, numberAt } from "./numberText.ts";

/**
 * The decimal mark of one file: declared, or a point where commas part the fields, or else recognised once from the
 * numbers themselves and held for the whole file. A file that uses both, or whose every marked number may as well be
 * thousands, is not read at all: cell by cell nobody could say.
 */
export class DecimalMarks {
  private mark: DecimalMark | null;
  private readonly settled: boolean;
  private proven: boolean;
  private firstLine = 0;
  private mixedAt: { line: number; text: string } | null = null;

  constructor(declared: DecimalMark | null, delimiter: string) {
    this.mark = declared ?? (delimiter === "," ? "." : null);
    this.settled = this.mark !== null;
    this.proven = this.settled;
  }

  /** For messages. */
  get current(): DecimalMark {
    return this.mark ?? ".";
  }

  /** The number between two offsets, NaN where it is none under this file's mark. */
  read(text: string, start: number, end: number, line: number): number {
    if (this.proven) {
      const value = numberAt(text, start, end, this.current);
      if (this.settled || !Number.isNaN(value)) return value;
    }
    const cut = text.slice(start, end);
    for (const mark of [".", ","] as const) {
      const value = numberAt(cut, 0, cut.length, mark);
      if (Number.isNaN(value)) continue;
      if (!cut.includes(mark)) return value;
      if (this.mark === null) {
        this.mark = mark;
        this.firstLine = line;
      } else if (this.mark !== mark) this.mixedAt ??= { line, text: cut };
      if (!mayBeThousands(cut)) this.proven = true;
      return value;
    }
    return Number.NaN;
  }

  /** Ask when the file has ended: why its numbers cannot be trusted, if they cannot. */
  fault(): (CellFault & { readonly line: number; readonly value: string | null }) | null {
    if (this.settled || this.mark === null) return null;
    const hint = 'Declare it in house.toml: [files."name.csv"] decimal = "," (or ".").';
    if (this.mixedAt) {
      const [first, other] = this.mark === "." ? ["point", "comma"] : ["comma", "point"];
      return {
        rule: "decimal-mixed",
        message: `The file writes numbers both with a decimal ${first} (line ${this.firstLine}) and with a ${other} (line ${this.mixedAt.line}).`,
        hint: "Write every number of the file the same way, without thousands marks.",
        line: this.mixedAt.line,
        value: this.mixedAt.text,
      };
    }
    if (this.proven) return null;
    return {
      rule: "decimal-unclear",
      message: `Every number with a mark has three digits after it, so that nobody can tell decimals from thousands (line ${this.firstLine} is the first).`,
      hint,
      line: this.firstLine,
      value: null,
    };
  }
}
