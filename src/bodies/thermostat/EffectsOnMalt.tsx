import { effectBasis, effectSize, effectTitle } from "../../findings/driftEffectWords.ts";
import { useUnits } from "../context.ts";
import { Entry } from "../Entry.tsx";
import type { KilnPlace } from "./kilnPlace.ts";

/** What a drift did to the malt, as far as these runs can tell. */
export function EffectsOnMalt({ kiln, suffix, note }: KilnPlace) {
  const units = useUnits();
  if (kiln.effects.length === 0) return null;
  return (
    <Entry id={`effects${suffix}`} title="What it did to the malt" note={note}>
      <dl class="facts facts-long">
        {kiln.effects.map((effect) => (
          <div>
            <dt>{effectTitle[effect.measure]}</dt>
            <dd>{effectSize(effect, units)}</dd>
            <dd class="why">{effectBasis(effect)}</dd>
          </div>
        ))}
      </dl>
      <p class="table-note">
        In brackets 95&nbsp;% intervals. What changed at the same time as the thermostat is in these numbers too.
      </p>
    </Entry>
  );
}
