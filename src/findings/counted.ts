import { printNumber } from "../units/print.ts";

const WORDS = ["no", "one", "two", "three", "four", "five", "six", "seven", "eight", "nine", "ten", "eleven", "twelve"];

/** `1 load`, `12 loads`, `no loads`; an irregular plural may be given: `counted(2, "batch", "batches")`. */
export function counted(count: number, one: string, many = `${one}s`): string {
  if (count === 0) return `no ${many}`;
  return `${printNumber(count, 0)}\u00a0${count === 1 ? one : many}`;
}

/** At the start of a sentence: `Seven loads`, `14 loads`. */
export function countedInWords(count: number, one: string, many = `${one}s`): string {
  const word = WORDS[count];
  if (word === undefined) return counted(count, one, many);
  return `${word.charAt(0).toUpperCase()}${word.slice(1)} ${count === 1 ? one : many}`;
}

/** `a, b and c`. */
export function listed(items: readonly string[]): string {
  if (items.length < 2) return items.join("");
  return `${items.slice(0, -1).join(", ")} and ${items.at(-1)}`;
}
