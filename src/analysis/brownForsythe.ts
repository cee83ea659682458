import { fUpperTail } from "./distributions.ts";
import { mean, median } from "./summary.ts";

export interface SpreadTest {
  readonly f: number;
  readonly degreesOfFreedom: readonly [number, number];
  readonly p: number;
}

/** How far each value lies from the middle of its group. */
export const awayFromMedian = (group: readonly number[]): number[] => {
  const middle = median(group);
  return group.map((value) => Math.abs(value - middle));
};

/**
 * Do groups spread alike? One-way analysis of variance of the distances from each group's median (Brown and Forsythe
 * 1974, Journal of the American Statistical Association 69, 364–367): outliers and skewness mislead it little.
 *
 * @param groups two or more, none of them empty, with more values than groups
 * @returns null where no distance differs from another within its group
 * @throws {RangeError} for fewer
 */
export const brownForsythe = (groups: readonly (readonly number[])[]): SpreadTest | null =>
  oneWay(groups.map(awayFromMedian), "brownForsythe");

/**
 * One-way analysis of variance of groups.
 *
 * @param caller names who asked, for the message
 * @returns null where nothing varies within a group
 * @throws {RangeError} for fewer than two groups, an empty one, or no more values than groups
 */
export function oneWay(groups: readonly (readonly number[])[], caller = "oneWay"): SpreadTest | null {
  const values = groups.reduce((sum, group) => sum + group.length, 0);
  if (groups.length < 2 || values <= groups.length || groups.some((group) => group.length === 0)) {
    throw new RangeError(
      `${caller} requires two groups and more values than groups; got ${groups.length} and ${values}`,
    );
  }
  const whole = mean(groups.flat());
  let [between, within] = [0, 0];
  for (const group of groups) {
    const own = mean(group);
    between += group.length * (own - whole) ** 2;
    for (const value of group) within += (value - own) ** 2;
  }
  const degreesOfFreedom = [groups.length - 1, values - groups.length] as const;
  if (!(within > 0)) return null;
  const f = between / degreesOfFreedom[0] / (within / degreesOfFreedom[1]);
  return { f, degreesOfFreedom, p: fUpperTail(f, ...degreesOfFreedom) };
}
