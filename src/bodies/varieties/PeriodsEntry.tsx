import type { FigureSpec } from "../../figures/figureSpec.ts";
import { periodsSentence } from "../../findings/varieties/periodSentences.ts";
import type { PeriodComparison } from "../../report/varietiesResult.ts";
import { useUnits } from "../context.ts";
import { Entry } from "../Entry.tsx";
import { Figure } from "../Figure.tsx";
import { Said } from "../Said.tsx";

interface PeriodsEntryProps {
  readonly periods: readonly PeriodComparison[];
  readonly figure: FigureSpec | null;
}

/** This quarter of the year against the last, with intervals. */
export function PeriodsEntry({ periods, figure }: PeriodsEntryProps) {
  const units = useUnits();
  const [first] = periods;
  if (first === undefined) return null;
  const alike = periods.every(({ now, before }) => now.name === first.now.name && before.name === first.before.name);
  return (
    <Entry
      id="periods"
      title="This quarter, last quarter"
      note={alike ? `${first.now.name} against ${first.before.name}.` : undefined}
    >
      <p>
        <Said sentence={periodsSentence(periods, units)} />
      </p>
      {figure === null ? null : <Figure spec={figure} />}
    </Entry>
  );
}
