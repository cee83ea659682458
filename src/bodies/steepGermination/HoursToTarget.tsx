import { hoursToTargetSentence } from "../../findings/steepGermination/uptakeSentences.ts";
import type { UptakeModel } from "../../report/steepGerminationResult.ts";
import { useUnits } from "../context.ts";
import { Said } from "../Said.tsx";

/** For each variety that has a target: the wet hours that would have met it, or why they are not said. */
export function HoursToTarget({ rows }: { readonly rows: UptakeModel["hoursToTarget"] }) {
  const units = useUnits();
  if (rows.length === 0) return null;
  return (
    <ul class="lines">
      {rows.map((row) => (
        <li>
          <Said sentence={hoursToTargetSentence(row, units)} />
        </li>
      ))}
    </ul>
  );
}
