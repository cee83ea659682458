import type { EndLabel } from "./endLabels.ts";
import type { SpreadLevel } from "./spreadLevels.ts";

interface Room {
  readonly narrow: boolean;
  /** Lines that lie closer than this, in the unit of the levels, cannot have a row of words each. */
  readonly least: number;
}

/** Levels from the highest limit down, those together whose rows of words would push each other off their lines. */
function closeTogether(levels: readonly SpreadLevel[], least: number): readonly (readonly SpreadLevel[])[] {
  const groups: SpreadLevel[][] = [];
  for (const level of levels.toSorted((a, b) => b.high - a.high)) {
    const group = groups.at(-1);
    const last = group?.at(-1);
    if (group && last && last.high - level.high < least) group.push(level);
    else groups.push([level]);
  }
  return groups;
}

/**
 * At the right end: the limit and the usual spread of the latest batch, or of each number of samples where they mix. Limits
 * that lie too close for a row each share one name, their numbers of samples from the top line down.
 */
export function levelNames(ending: readonly SpreadLevel[], { narrow, least }: Room): readonly EndLabel[] {
  if (ending.length === 0) return [];
  const usual = ending.reduce((sum, { centre }) => sum + centre, 0) / ending.length;
  const names = closeTogether(ending, least).map((group): EndLabel => {
    const y = group.reduce((sum, { high }) => sum + high, 0) / group.length;
    const counts = group.map(({ count }) => count).join(", ");
    if (ending.length === 1) return { y, role: "soft", rows: ["limit"] };
    if (group.length === 1) return { y, role: "soft", rows: [narrow ? `of ${counts}` : `${counts} samples`] };
    return { y, role: "soft", rows: narrow ? ["of", counts] : [counts, "samples"] };
  });
  return [...names, { y: usual, role: "ink", rows: ["usual"] }];
}
