import { holdVerdict, isAlarmed } from "../../findings/holdVerdict.ts";
import { leavesSentence } from "../../findings/leavesSentence.ts";
import { doubtSentence, loggerDoubts } from "../../findings/loggerDoubts.ts";
import { stretchGrounds, stretchSentence, withoutSentence } from "../../findings/stretchSentences.ts";
import { toleranceWords } from "../../findings/thermostatAnswer.ts";
import { holdTitle } from "../../findings/thermostatWords.ts";
import type { HoldName } from "../../report/thermostatResult.ts";
import { Entry } from "../Entry.tsx";
import { Figure } from "../Figure.tsx";
import { Fold } from "../Fold.tsx";
import { Said } from "../Said.tsx";
import type { KilnPlace } from "./kilnPlace.ts";
import type { HoldFigures } from "./thermostatFigures.ts";
import { useReader } from "./useReader.ts";

/** Earlier stretches up to here stand open. */
const MOST_OPEN = 2;

interface HoldEntryProps extends KilnPlace {
  readonly hold: HoldName;
  readonly figures: HoldFigures;
  /** The table on the page that holds the loads' numbers. */
  readonly numbersIn: string;
}

/** One hold of one kiln: its offsets, what charts and models say of the latest stretch, swing and rise, and what came before. */
export function HoldEntry({ kiln, hold, figures, suffix, note, numbersIn }: HoldEntryProps) {
  const reader = useReader();
  const judgement = kiln[hold];
  const verdict = holdVerdict(judgement);
  if (judgement === null || verdict.kind === "none") return null;
  const { stretch } = verdict;
  // An alarm says first that the logger may be the one that is off.
  const doubts = isAlarmed(verdict) ? loggerDoubts(kiln) : [];
  const earlier = judgement.stretches.filter((one) => one !== stretch && one.loads > 0).toReversed();
  const leaves = verdict.kind === "tooFew" ? null : (stretch.models?.leaves ?? null);
  const grounds = stretchGrounds(stretch);
  const without = withoutSentence(judgement);
  const before = (
    <ul class="lines">
      {earlier.map((one) => (
        <li>
          <Said sentence={stretchSentence(one, reader)} />
        </li>
      ))}
    </ul>
  );
  return (
    <Entry id={`${hold}${suffix}`} title={holdTitle[hold]} note={note}>
      {doubts.map((doubt) => (
        <p>
          <Said sentence={doubtSentence(doubt, reader)} />
        </p>
      ))}
      {figures.offsets === null ? null : <Figure spec={figures.offsets} numbersIn={numbersIn} />}
      <div class="prose">
        {grounds.length === 0 ? null : (
          <p>
            <Said sentence={grounds} />
          </p>
        )}
        {leaves === null ? null : (
          <p>
            <Said sentence={leavesSentence(leaves, toleranceWords(kiln, reader))} />
          </p>
        )}
      </div>
      {figures.swingAndRise === null ? null : <Figure spec={figures.swingAndRise} numbersIn={numbersIn} />}
      {earlier.length === 0 ? null : earlier.length <= MOST_OPEN ? (
        <section class="prose">
          <h3>Before that</h3>
          {before}
        </section>
      ) : (
        <Fold summary={`${earlier.length} stretches before that`} short>
          {before}
        </Fold>
      )}
      {without.length === 0 ? null : (
        <p class="small">
          <Said sentence={without} />
        </p>
      )}
    </Entry>
  );
}
