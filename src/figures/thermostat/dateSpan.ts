import { localParts, printDate, printDateInFull } from "../../units/instant.ts";

/** `27 Oct to 24 Nov 2026`: the year is said once where it is the same. */
export function printDateSpan(
  from: number,
  to: number,
  timeZone: string,
  { inFull = false }: { readonly inFull?: boolean } = {},
): string {
  const print = inFull ? printDateInFull : printDate;
  const [first, last] = [print(from, timeZone), print(to, timeZone)];
  if (first === last) return last;
  const { year } = localParts(from, timeZone);
  return `${year === localParts(to, timeZone).year ? first.slice(0, -` ${year}`.length) : first} to ${last}`;
}
