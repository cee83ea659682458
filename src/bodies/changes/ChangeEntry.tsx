import type { FigureSpec } from "../../figures/figureSpec.ts";
import {
  basisSentence,
  beyondSentence,
  effectStatement,
  lackingSentences,
  placeboSentence,
} from "../../findings/changes/changeSentences.ts";
import { mainEffect } from "../../findings/changes/changeWords.ts";
import { joinSentences, type Sentence } from "../../findings/sentence.ts";
import type { ChangeResult } from "../../report/changesResult.ts";
import { printDate } from "../../units/instant.ts";
import { useBody, useUnits } from "../context.ts";
import { Entry } from "../Entry.tsx";
import { Figure } from "../Figure.tsx";
import { Fold } from "../Fold.tsx";
import { Said } from "../Said.tsx";

const capital = (text: string): string => `${text.charAt(0).toUpperCase()}${text.slice(1)}`;

function Lines({ sentences }: { readonly sentences: readonly Sentence[] }) {
  const said = sentences.filter((sentence) => sentence.length > 0);
  if (said.length === 0) return null;
  return (
    <ul class="lines">
      {said.map((sentence) => (
        <li>
          <Said sentence={sentence} />
        </li>
      ))}
    </ul>
  );
}

interface ChangeEntryProps {
  readonly change: ChangeResult;
  readonly figure: FigureSpec | null;
}

/** One change: what it came to, what to beware of, batch by batch, and how that was worked out. */
export function ChangeEntry({ change, figure }: ChangeEntryProps) {
  const { house } = useBody();
  const units = useUnits();
  const { event, id, at, effects, warnings, tooLittle, altered } = change;
  const main = mainEffect(change);
  const lacking = effects.length === 0 ? [] : lackingSentences(change);
  return (
    <Entry id={id} title={capital(event.what)} note={`${printDate(at, house.timeZone)}, ${event.scope}`}>
      {tooLittle === null ? null : <p class="refusal">{tooLittle}</p>}
      <div class="prose">
        <Lines
          sentences={[
            ...effects.map((effect) =>
              joinSentences([
                effectStatement(effect, units),
                altered === null ? [] : beyondSentence(effect, altered, units),
              ]),
            ),
            main === null ? [] : placeboSentence(main, units),
          ]}
        />
      </div>
      {warnings.length === 0 ? null : (
        <section class="prose">
          <h3>Beware</h3>
          <Lines sentences={warnings.map(({ what }) => [what])} />
        </section>
      )}
      {figure === null ? null : <Figure spec={figure} />}
      {effects.length === 0 ? null : (
        <Fold summary="What was compared" short>
          <div class="prose">
            <Lines sentences={[...effects.map((effect) => basisSentence(effect, units)), ...lacking]} />
          </div>
        </Fold>
      )}
    </Entry>
  );
}
