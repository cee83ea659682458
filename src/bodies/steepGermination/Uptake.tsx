import type { FigureSpec } from "../../figures/figureSpec.ts";
import { unlikeSentence, uptakeLeftSentence } from "../../findings/steepGermination/uptakeSentences.ts";
import type { SteepGerminationResult } from "../../report/steepGerminationResult.ts";
import { Entry } from "../Entry.tsx";
import { Figure } from "../Figure.tsx";
import { RunLinks } from "../RunLink.tsx";
import { Said } from "../Said.tsx";
import { HoursToTarget } from "./HoursToTarget.tsx";

/** Batches unlike the rest are linked up to here, the latest. */
const MOST = 8;

interface UptakeProps {
  readonly result: SteepGerminationResult;
  readonly byHours: FigureSpec | null;
  readonly byWater: FigureSpec | null;
  /** Address of the table that holds the figures' numbers. */
  readonly numbersIn: string;
}

/** What the grain takes up in its hours and its water, and the hours that would have met the target. */
export function Uptake({ result, byHours, byWater, numbersIn }: UptakeProps) {
  const { uptake, uptakeTooLittle, steeps } = result;
  if (steeps.length === 0) return null;
  if (uptake === null) {
    return (
      <Entry id="uptake" title="Hours and water">
        <p>{uptakeTooLittle}</p>
      </Entry>
    );
  }
  return (
    <Entry id="uptake" title="Hours and water" note="What the grain takes up.">
      <div class="pair">
        {byHours === null ? null : <Figure spec={byHours} numbersIn={numbersIn} />}
        {byWater === null ? null : <Figure spec={byWater} numbersIn={numbersIn} />}
      </div>
      <HoursToTarget rows={uptake.hoursToTarget} />
      <p class="small">
        <Said sentence={uptakeLeftSentence(uptake)} />
      </p>
      {uptake.unlikeTheRest.length === 0 ? null : (
        <p>
          <Said sentence={unlikeSentence(uptake)} /> (<RunLinks runs={uptake.unlikeTheRest.slice(-MOST)} />
          ).
        </p>
      )}
    </Entry>
  );
}
