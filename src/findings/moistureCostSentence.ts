import type { MoistureCost } from "../report/controlChartResult.ts";
import { print, printNumber } from "../units/print.ts";
import type { UnitSystem } from "../units/unitSystem.ts";
import { percent } from "./chartWords.ts";
import { counted } from "./counted.ts";
import { joinSentences, type Sentence, strong } from "./sentence.ts";

/** What the spread of moisture costs in a year: sellable mass and energy dried away, and malt too damp to be accepted. */
export function moistureCostSentence(cost: MoistureCost, units: UnitSystem): Sentence {
  const dried: Sentence =
    cost.driedAwayKilogramsPerYear < 0.5
      ? [`No batch came off below the target of ${percent(cost.targetPercent)}.`]
      : [
          `Malt dried below the target of ${percent(cost.targetPercent)} gives away `,
          strong(`${print(cost.driedAwayKilogramsPerYear, "mass", units)} a year`),
          " that could have been sold",
          ...(cost.energyKilowattHoursPerYear === null
            ? ["; what drying it off took is not known, since energy is not logged."]
            : [", and takes ", strong(print(cost.energyKilowattHoursPerYear, "energy", units)), " to dry it off."]),
        ];
  const refused: Sentence =
    cost.refusedBatches === 0
      ? ["No batch came off above the highest moisture accepted."]
      : [
          strong(counted(cost.refusedBatches, "batch", "batches")),
          ` came off above the highest moisture accepted: `,
          strong(`${print(cost.refusedKilogramsPerYear, "mass", units)} a year`),
          " to dry again or to sell as something else.",
        ];
  return joinSentences([dried, refused]);
}

/** What the yearly numbers are made from. */
export function costBasisSentence({ batches, years }: MoistureCost): Sentence {
  const span = `${printNumber(years, 1)}\u00a0${Math.abs(years - 1) < 0.05 ? "year" : "years"}`;
  return [
    `From ${counted(batches, "batch", "batches")} in ${span}, by the mass balance: each batch’s dry matter at its own moisture against the same dry matter at the target.`,
    years < 1 ? " Less than a year is logged, so a year is worked out from it." : "",
  ];
}
