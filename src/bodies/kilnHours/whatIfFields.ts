import { clockOf } from "../../findings/whatIfSentence.ts";
import type { WhatIfInputs } from "../../report/kilnHoursResult.ts";
import type { WhatIfText } from "../../report/view.ts";
import { type Quantity, shownAs, toShown } from "../../units/quantity.ts";
import type { UnitSystem } from "../../units/unitSystem.ts";

/** One field of *Tonight*: the name it has in the address, and what it holds when the reader has typed nothing. */
export interface WhatIfField {
  readonly name: keyof WhatIfText;
  readonly label: string;
  readonly unit: string;
  readonly kind: "number" | "clock";
  readonly value: string;
  /** What an empty field means. */
  readonly placeholder?: string;
}

/** As a reader would type it: a plain minus, no spaces between thousands. */
function typed(inside: number | null, quantity: Quantity, units: UnitSystem, decimals?: number): string {
  if (inside === null) return "";
  return String(Number(toShown(inside, quantity, units).toFixed(decimals ?? shownAs(quantity, units).decimals)));
}

/** The fields in the order a maltster knows them, each with what was typed, else with what this house usually loads. */
export function whatIfFields(
  text: Readonly<Partial<WhatIfText>>,
  usual: WhatIfInputs,
  units: UnitSystem,
): readonly WhatIfField[] {
  const unit = (quantity: Quantity): string => shownAs(quantity, units).unit;
  const field = (
    name: keyof WhatIfText,
    label: string,
    unitText: string,
    usually: string,
    kind: WhatIfField["kind"] = "number",
  ): WhatIfField => ({ name, label, unit: unitText, kind, value: text[name] ?? usually });
  return [
    field("humidity", "Outside humidity", "%", typed(usual.relativeHumidityPercent, "percent", units, 0)),
    field("temperature", "Outside air", unit("temperature"), typed(usual.celsius, "temperature", units, 0)),
    field("depth", "Bed depth", unit("bedDepth"), typed(usual.bedDepthMetres, "bedDepth", units)),
    {
      ...field("load", "Green load", unit("mass"), typed(usual.greenLoadKilograms, "mass", units)),
      placeholder: "as bed",
    },
    field("start", "Loaded at", "", clockOf(usual.startedAtMinutes), "clock"),
    field(
      "finish",
      "Wanted off by",
      "",
      usual.wantedFinishMinutes === null ? "" : clockOf(usual.wantedFinishMinutes),
      "clock",
    ),
    field("setPoint", "Drying set point", unit("temperature"), typed(usual.dryingSetCelsius, "temperature", units, 0)),
  ];
}
