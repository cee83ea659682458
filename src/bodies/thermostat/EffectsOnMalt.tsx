import type { DriftEffect } from "../../report/thermostatResult.ts";
import { print, printRange } from "../../units/print.ts";
import type { Quantity } from "../../units/quantity.ts";
import type { UnitSystem } from "../../units/unitSystem.ts";
import { useUnits } from "../context.ts";
import { Entry } from "../Entry.tsx";
import type { KilnPlace } from "./kilnPlace.ts";

const QUANTITY: Readonly<Record<DriftEffect["measure"], Quantity>> = {
  "kiln hours": "hours",
  "final moisture": "percentagePoints",
  energy: "energy",
};
const TITLE: Readonly<Record<DriftEffect["measure"], string>> = {
  "kiln hours": "Kiln hours",
  "final moisture": "Final moisture",
  energy: "Energy",
};

function size({ measure, effect }: DriftEffect, units: UnitSystem): string {
  if (effect === null) return "cannot be told";
  const quantity = QUANTITY[measure];
  const options = { signed: true, decimals: measure === "energy" ? 0 : 2 } as const;
  const range = printRange(effect.low, effect.high, quantity, units, options);
  return `${print(effect.estimate, quantity, units, options)} (${range})`;
}

/** What a drift did to the malt, as far as these runs can tell. */
export function EffectsOnMalt({ kiln, suffix, note }: KilnPlace) {
  const units = useUnits();
  if (kiln.effects.length === 0) return null;
  return (
    <Entry id={`effects${suffix}`} title="What it did to the malt" note={note}>
      <dl class="facts">
        {kiln.effects.map((effect) => (
          <div>
            <dt>{TITLE[effect.measure]}</dt>
            <dd>{size(effect, units)}</dd>
            <dd class="why">{effect.sentence}</dd>
          </div>
        ))}
      </dl>
      <p class="table-note">
        In brackets 95&nbsp;% intervals. What changed at the same time as the thermostat is in these numbers too.
      </p>
    </Entry>
  );
}
