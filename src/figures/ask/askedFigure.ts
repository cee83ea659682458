import type { AskedAnswer, AskedKind } from "../../tables/askedAnswer.ts";
import { printNumber } from "../../units/print.ts";
import { fullWidth, narrowWidth } from "../figureSettings.ts";
import type { FigureSpec } from "../figureSpec.ts";
import { countOf } from "../listedRows.ts";
import { type AskedBar, askedBars } from "./askedBars.ts";
import { askedTable, cellPrinter } from "./askedCells.ts";
import { type AskedDot, askedDots } from "./askedDots.ts";

/** More bars than this are a list and no picture. */
const MOST_BARS = 40;

interface Pair {
  readonly across: number;
  readonly up: number;
}

/** The first column that can lie along the foot, and the first number after it. */
function pairOf({ columns }: AskedAnswer): Pair | null {
  const isAcross = (kind: AskedKind): boolean => kind !== "flag";
  const across = columns.findIndex(({ kind }) => isAcross(kind));
  const up = columns.findIndex(({ kind }, at) => at > across && kind === "number");
  if (across >= 0 && up >= 0) return { across, up };
  return null;
}

/**
 * A simple drawing of any answer: bars where its first column is text, dots where it is a date or a number; the first
 * number after it is drawn against it.
 *
 * @returns null where the answer has no such columns, fewer than two rows, or more bars than a picture holds
 */
export function askedFigure(answer: AskedAnswer): FigureSpec | null {
  const pair = pairOf(answer);
  if (pair === null) return null;
  const [first, second] = [answer.columns[pair.across], answer.columns[pair.up]];
  if (first === undefined || second === undefined) return null;
  const drawn = answer.rows.filter((row) => row[pair.across] !== null && typeof row[pair.up] === "number");
  if (drawn.length < 2 || (first.kind === "text" && drawn.length > MOST_BARS)) return null;

  const printUp = cellPrinter(second, answer.rows, pair.up);
  const printAcross = cellPrinter(first, answer.rows, pair.across);
  const values = drawn.map((row) => row[pair.up] as number);
  const [least, most] = [Math.min(...values), Math.max(...values)];
  const rowAt = (value: number): string => printAcross(drawn[values.indexOf(value)]?.[pair.across] ?? null);
  const left = answer.rows.length - drawn.length;
  const without = left === 0 ? "" : ` ${printNumber(left, 0)} without a value ${left === 1 ? "is" : "are"} left out.`;
  const common = {
    id: "asked",
    title: `${second.name} by ${first.name}`,
    summary: `${countOf(drawn.length, "row")}: ${second.name} from ${printUp(least)} (${rowAt(least)}) to ${printUp(most)} (${rowAt(most)}).${without}`,
    table: askedTable(answer),
    wideWidth: fullWidth,
    narrowWidth,
    printAs: "wide" as const,
  };
  if (first.kind === "text") {
    const bars: AskedBar[] = drawn.map((row) => ({
      name: printAcross(row[pair.across] ?? null),
      value: row[pair.up] as number,
      said: printUp(row[pair.up] ?? null),
    }));
    return { ...common, options: (frame) => askedBars(bars, second.name, frame) };
  }
  const dots: AskedDot[] = drawn.map((row) => ({ x: row[pair.across] as number, y: row[pair.up] as number }));
  const inTime = first.kind !== "number";
  return {
    ...common,
    options: (frame) => askedDots(dots, { across: inTime ? null : first.name, up: second.name }, frame),
  };
}
