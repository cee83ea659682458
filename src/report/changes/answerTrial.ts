import type { TrialPlan } from "../changesResult.ts";
import { readNumber } from "../kilnHours/whatIfInputs.ts";
import type { TrialAnswer } from "../trialAnswer.ts";
import type { View } from "../view.ts";
import { runsFor } from "./trialPlans.ts";

/** The plan that a reader chose, else the first. */
export const chosenPlan = (plans: readonly TrialPlan[], view: View): TrialPlan | null =>
  plans.find(({ measure }) => measure === view.trial.measure) ?? plans[0] ?? null;

/**
 * Runs needed for the difference that the reader typed, at the spread of the report; of the plan's middle difference where
 * nothing is typed. No engine is asked.
 */
export function answerTrial(plans: readonly TrialPlan[], view: View): TrialAnswer | null {
  const plan = chosenPlan(plans, view);
  if (plan === null) return null;
  const { measure, spread, rows } = plan;
  const usual = rows[Math.floor(rows.length / 2)]?.difference ?? spread;
  const typed = view.trial.difference?.trim() ?? "";
  const difference = typed === "" ? usual : readNumber(typed);
  if (difference === null || !(difference > 0)) {
    return { kind: "refusal", sentence: "The difference must be a number above 0." };
  }
  return { kind: "runs", measure, row: { difference, ...runsFor(difference, spread) } };
}
