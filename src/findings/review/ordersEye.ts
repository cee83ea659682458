import type { MonthReview } from "../../report/reviewResult.ts";
import { printNumber } from "../../units/print.ts";
import { counted } from "../counted.ts";
import { type Sentence, strong } from "../sentence.ts";

/** From one in four on, being late is no rare bad luck; a finding it is only where it is nearly sure. */
const LEAST_CHANCE_LATE = 0.25;

/**
 * What wants an eye among the orders where they are no finding: orders past their day, and a fair chance that the next comes too
 * late. Empty where there is neither, or where the orders are among the findings.
 */
export function ordersEyeSentence({ promised, findings }: Pick<MonthReview, "promised" | "findings">): Sentence {
  if (promised === null || findings.some(({ facts }) => facts.some(({ kind }) => kind === "orders"))) return [];
  const overdue = promised.orders.filter((order) => order.overdue).length;
  const past =
    overdue === 0 ? [] : [strong(`${counted(overdue, "order")} past ${overdue === 1 ? "its" : "their"} day`)];
  const chance = promised.loadsNeeded === 0 ? 0 : (promised.chanceLate ?? 0);
  const late =
    chance < LEAST_CHANCE_LATE
      ? []
      : [
          "a chance of ",
          strong(`${printNumber(100 * chance, 0)} in 100`),
          " that malt yet to be steeped comes too late",
        ];
  if (past.length + late.length === 0) return [];
  const and = past.length > 0 && late.length > 0 ? [", and "] : [];
  return ["Worth an eye: ", ...past, ...and, ...late, "."];
}
