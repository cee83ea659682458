import type { DateOrder } from "../house.ts";

const MONTHS = ["jan", "feb", "mar", "apr", "may", "jun", "jul", "aug", "sep", "oct", "nov", "dec"];
const NAMED_FIRST = /^([a-z]{3,9})\.?\s+(\d{1,2}),?\s+(\d{4})(?=$|[T\s,])/i;
const NAMED_SECOND = /^(\d{1,2})[.\s/-]+([a-z]{3,9})\.?[\s/,-]+(\d{4}|\d{2})(?=$|[T\s,])/i;
const SHORT = /^(\d{1,2})([./-])(\d{1,2})\2(\d{1,2})(?=$|[T\s,])/;

const two = (text: string): string => text.padStart(2, "0");
const monthOf = (name: string): string | null => {
  const at = MONTHS.indexOf(name.slice(0, 3).toLowerCase());
  return at < 0 ? null : two(String(at + 1));
};

/**
 * A date as loggers and spreadsheets export it, as the log format writes it: English names of months become numbers and,
 * where the match says that years are short, `08.03.26` gets its century. Anything else stays as it is, for the reader of
 * the format to judge.
 */
export function writtenWhen(text: string, order: DateOrder, shortYears: boolean): string {
  const first = NAMED_FIRST.exec(text);
  const second = first ? null : NAMED_SECOND.exec(text);
  const named = first ?? second;
  if (named) {
    const [whole, a = "", b = "", year = ""] = named;
    const month = monthOf(first ? a : b);
    if (month === null || (year.length === 2 && !shortYears)) return text;
    return `${year.length === 2 ? `20${year}` : year}-${month}-${two(first ? b : a)}${text.slice(whole.length)}`;
  }
  const short = shortYears ? SHORT.exec(text) : null;
  if (!short) return text;
  const [whole, a = "", , b = "", c = ""] = short;
  const [year, month, day] = order === "ymd" ? [a, b, c] : order === "dmy" ? [c, b, a] : [c, a, b];
  return `20${two(year)}-${two(month)}-${two(day)}${text.slice(whole.length)}`;
}
