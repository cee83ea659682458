import type { FigureSpec } from "../../figures/figureSpec.ts";
import { fanSentence } from "../../findings/fanSentence.ts";
import { Entry } from "../Entry.tsx";
import { Figure } from "../Figure.tsx";
import { Said } from "../Said.tsx";
import type { KilnPlace } from "./kilnPlace.ts";
import { useReader } from "./useReader.ts";

/** The fan's own thermostat, which works the other way round; nothing where the fan never had one. */
export function FanEntry({ kiln, suffix, note, figure }: KilnPlace & { readonly figure: FigureSpec | null }) {
  const reader = useReader();
  if (kiln.fan.length === 0) return null;
  return (
    <Entry id={`fan${suffix}`} title="The fan’s thermostat" note={note}>
      <div class="pair">
        {figure === null ? null : <Figure spec={figure} />}
        <p>
          <Said sentence={fanSentence(kiln, reader)} /> It works the other way round: on when the air is warm, off when
          it cools.
        </p>
      </div>
    </Entry>
  );
}
