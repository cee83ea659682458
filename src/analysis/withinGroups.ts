import { fUpperTail, studentTQuantile, studentTTwoSidedP } from "./distributions.ts";
import type { Interval } from "./regressionFit.ts";
import { TriangularFactor } from "./triangularFactor.ts";

export interface Effect extends Interval {
  readonly p: number;
}

/** What moves with some columns within groups: whatever tells the groups apart has no part in it. */
export interface WithinGroups {
  readonly observations: number;
  readonly groups: number;
  readonly degreesOfFreedom: number;
  /** The chance of as much by accident, all columns together. */
  readonly p: number;
  readonly coefficients: readonly number[];
  /** The effect of a step of the columns: `[1, 0]` is one unit of the first. */
  readonly effect: (step: readonly number[]) => Effect;
}

/**
 * Least squares with a level for each group (fixed effects): values and columns are taken about their group's means first
 * (Frisch and Waugh 1933, Econometrica 1, 387–401), which gives the same coefficients as a column for each group.
 *
 * @param group a name or number for each observation
 * @returns null where the columns do not vary within groups, follow from each other, or leave no degrees of freedom
 * @throws {RangeError} for lists of unequal length
 */
export function withinGroups(
  group: readonly (string | number)[],
  columns: readonly ArrayLike<number>[],
  response: ArrayLike<number>,
): WithinGroups | null {
  const observations = response.length;
  if (group.length !== observations || columns.some(({ length }) => length !== observations)) {
    throw new RangeError(
      `withinGroups requires lists of one length; got ${observations} values, ${group.length} groups`,
    );
  }
  const members = new Map<string | number, number[]>();
  group.forEach((name, at) => {
    const own = members.get(name);
    if (own) own.push(at);
    else members.set(name, [at]);
  });
  const centred = (values: ArrayLike<number>): Float64Array => {
    const about = new Float64Array(observations);
    for (const own of members.values()) {
      const middle = own.reduce((sum, at) => sum + (values[at] as number), 0) / own.length;
      for (const at of own) about[at] = (values[at] as number) - middle;
    }
    return about;
  };
  const x = columns.map(centred);
  const y = centred(response);
  const degreesOfFreedom = observations - members.size - columns.length;
  const factor = new TriangularFactor(columns.length);
  let total = 0;
  for (let at = 0; at < observations; at += 1) {
    factor.append(
      x.map((column) => column[at] as number),
      y[at] as number,
    );
    total += (y[at] as number) ** 2;
  }
  const varies = x.every((column) => column.some((value) => Math.abs(value) > 1e-9));
  if (degreesOfFreedom < 1 || !varies || !factor.isFullRank() || !(factor.residualSquares > 0)) return null;
  const variance = factor.residualSquares / degreesOfFreedom;
  const explained = Math.max(0, total - factor.residualSquares) / columns.length;
  return {
    observations,
    groups: members.size,
    degreesOfFreedom,
    p: fUpperTail(explained / variance, columns.length, degreesOfFreedom),
    coefficients: columns.map((_, at) => factor.project(columns.map((_, other) => (other === at ? 1 : 0))).estimate),
    effect: (step) => {
      const { estimate, leverage } = factor.project(step);
      const standardError = Math.sqrt(variance * leverage);
      const reach = studentTQuantile(0.975, degreesOfFreedom) * standardError;
      const p = studentTTwoSidedP(estimate / standardError, degreesOfFreedom);
      return { estimate, low: estimate - reach, high: estimate + reach, p };
    },
  };
}
