import type { CellFault } from "./cellFault.ts";

const ZERO = 0x30;
const MINUS = 0x2d;
const PLUS = 0x2b;
const TYPESET_MINUS = 0x2212;
const POWERS = Array.from({ length: 16 }, (_, power) => 10 ** power);

export type DecimalMark = "." | ",";

const grammars: Readonly<Record<DecimalMark, RegExp>> = {
  ".": /^[+-]?(\d+(\.\d+)?|\.\d+)(e[+-]?\d+)?$/i,
  ",": /^[+-]?(\d+(,\d+)?|,\d+)(e[+-]?\d+)?$/i,
};

/**
 * The number written in `text` between two offsets, already trimmed; NaN where it is none. The grammar is narrow:
 * digits, one decimal mark, an exponent; no thousands marks, no hexadecimal, no `inf`, no underscore.
 *
 * Up to fifteen digits are put together here, which is exact (both the digits and the power of ten are doubles, and
 * one division rounds once); anything longer goes through the language's own reader.
 */
export function numberAt(text: string, start: number, end: number, mark: DecimalMark): number {
  const markCode = mark.charCodeAt(0);
  let at = start;
  let sign = 1;
  const first = text.charCodeAt(at);
  if (first === MINUS || first === TYPESET_MINUS) {
    sign = -1;
    at++;
  } else if (first === PLUS) at++;
  let digits = 0;
  let value = 0;
  let markAt = -1;
  for (; at < end; at++) {
    const code = text.charCodeAt(at);
    const digit = code - ZERO;
    if (digit >= 0 && digit <= 9) {
      value = value * 10 + digit;
      digits++;
    } else if (code === markCode && markAt < 0) markAt = at;
    else return slowNumber(text.slice(start, end), mark);
  }
  if (digits === 0 || digits > 15 || markAt === end - 1) return slowNumber(text.slice(start, end), mark);
  if (markAt >= 0) value /= POWERS[end - 1 - markAt] as number;
  return sign * value;
}

function slowNumber(text: string, mark: DecimalMark): number {
  const plain = text.replace("\u2212", "-");
  if (!grammars[mark].test(plain)) return Number.NaN;
  const value = Number(plain.replace(",", "."));
  return Number.isFinite(value) ? value : Number.NaN;
}

/** True for `1.234` and `1,234`, which may be a thousand or a decimal: only the rest of the file can say. */
export function mayBeThousands(text: string): boolean {
  return /^[+\-\u2212]?[1-9]\d{0,2}[.,]\d{3}$/.test(text);
}

/** Why `text` is not a number under `mark`. */
export function numberFault(text: string, mark: DecimalMark): CellFault {
  if (/^#/.test(text)) {
    return {
      rule: "spreadsheet-error",
      message: `“${text}” is a spreadsheet's error mark, not a number.`,
      hint: "Mend the formula in the spreadsheet, or leave the cell blank.",
    };
  }
  const other = mark === "." ? "," : ".";
  const plain = text.replace("\u2212", "-");
  if (grammars[mark].test(plain)) {
    return {
      rule: "not-a-number",
      message: "The number is larger than any that can be reckoned with.",
      hint: "Look for a slip of the pen.",
    };
  }
  if (grammars[other].test(plain)) {
    const said = other === "," ? "comma" : "point";
    return {
      rule: "decimal-mark",
      message: `“${text}” has a ${said}, and this file's decimal mark is ${mark === "," ? "a comma" : "a point"}.`,
      hint: `If the ${said} is the decimal mark of the whole file, declare decimal = "${other}" for it in house.toml; if it marks thousands, leave it out.`,
    };
  }
  if (/^[+\-\u2212]?\d{1,3}([.,'’\s]\d{3})+([.,]\d+)?$/u.test(text)) {
    return {
      rule: "thousands-mark",
      message: `“${text}” has a mark between its thousands.`,
      hint: "Write the number without one: 1234.5",
    };
  }
  if (/^[+\-\u2212]?[\d.,]+\s*[%°a-z]/iu.test(text) && !/^0[xbo]/i.test(text) && /\d/.test(text)) {
    return {
      rule: "unit-in-value",
      message: `“${text}” has more than a number in it.`,
      hint: "Write the number alone; the unit stands in the column's name.",
    };
  }
  return {
    rule: "not-a-number",
    message: `“${text}” is not a number.`,
    hint: "Write a number, or leave the cell blank where nothing was recorded.",
  };
}
