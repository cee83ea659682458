import { labSentence } from "../../findings/varieties/labSentences.ts";
import type { LabRow } from "../../report/varietiesResult.ts";
import { Entry } from "../Entry.tsx";
import { Figure } from "../Figure.tsx";
import { Fold } from "../Fold.tsx";
import { Said } from "../Said.tsx";
import { useReader } from "../thermostat/useReader.ts";
import { LabTable } from "./LabTable.tsx";
import type { VarietyFigures } from "./varietyFigures.ts";

interface LabEntryProps {
  readonly lab: readonly LabRow[];
  readonly figures: VarietyFigures["lab"];
}

/** What laboratories found, each set of methods by itself. */
export function LabEntry({ lab, figures }: LabEntryProps) {
  const reader = useReader();
  return (
    <Entry id="laboratory" title="In the laboratory">
      <p>
        <Said sentence={labSentence(lab, reader)} />
      </p>
      {figures.map(({ group, figure }, i) => (
        <>
          {figure === null ? null : <Figure spec={figure} numbersIn={`#certificates-${i + 1}`} />}
          <Fold summary={group.rows.length === 1 ? "The certificate" : `The ${group.rows.length} certificates`}>
            {/* A link to a place inside a fold opens it. */}
            <div id={`certificates-${i + 1}`}>
              <LabTable group={group} />
            </div>
          </Fold>
        </>
      ))}
      {lab.length === 0 ? null : (
        <p class="table-note">
          One EBC unit is 1/1.97 of a degree SRM; °WK = 3.5 °Lintner − 16 (both from memory of the analysis committees’
          usage). Extract as is: extract of dry mass times the share that is not water. A laboratory, not a log, says
          whether malt is fit for food: mycotoxins need a test.
        </p>
      )}
    </Entry>
  );
}
