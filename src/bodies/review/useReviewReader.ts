import { useMemo } from "preact/hooks";
import type { ReviewReader } from "../../findings/review/reader.ts";
import type { ReviewResult } from "../../report/reviewResult.ts";
import { useBody, useUnits } from "../context.ts";

/** Who reads a review: units, zone and the money that things cost. */
export function useReviewReader({ costs }: ReviewResult): ReviewReader {
  const { house } = useBody();
  const units = useUnits();
  const { timeZone } = house;
  return useMemo(() => ({ units, timeZone, costs }), [units, timeZone, costs]);
}
