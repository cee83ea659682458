import type { FigureSpec } from "../../figures/figureSpec.ts";
import { lagSentence, lagsSentence } from "../../findings/steepGermination/bedSentences.ts";
import type { SteepGerminationResult } from "../../report/steepGerminationResult.ts";
import { useUnits } from "../context.ts";
import { Entry } from "../Entry.tsx";
import { Figure } from "../Figure.tsx";
import { RunLink } from "../RunLink.tsx";
import { Said } from "../Said.tsx";

/** Beds that stood apart are put into words up to here, the latest. */
const MOST = 8;

interface BedsProps {
  readonly beds: SteepGerminationResult["beds"];
  readonly figure: FigureSpec | null;
}

/** Beds of one batch side by side: the one that lagged, which a batch's mean hides. */
export function Beds({ beds, figure }: BedsProps) {
  const units = useUnits();
  if (figure === null) return null;
  const shown = beds.lags.slice(-MOST).reverse();
  return (
    <Entry id="beds" title="Beds side by side">
      <Figure spec={figure} />
      {shown.length === 0 ? null : (
        <>
          <p>
            <Said sentence={lagsSentence(beds)} />
            {beds.lags.length > MOST ? ` The latest ${MOST}:` : null}
          </p>
          <ul class="lines">
            {shown.map((lag) => (
              <li>
                <RunLink run={lag.run} />
                {", "}
                <Said sentence={lagSentence(lag, units)} />
              </li>
            ))}
          </ul>
        </>
      )}
    </Entry>
  );
}
