import { print } from "../../units/print.ts";
import type { Quantity } from "../../units/quantity.ts";
import type { UnitSystem } from "../../units/unitSystem.ts";
import type { FittedLoad, HoursAnalysis, KilnHoursResult, WhatIfInputs } from "../kilnHoursResult.ts";
import type { WhatIfAnswer } from "../whatIfAnswer.ts";
import { expectHours, type KnownAtLoading } from "./expectHours.ts";

const MINUTES_PER_HOUR = 60;
const MINUTES_PER_DAY = 24 * MINUTES_PER_HOUR;

const EDGES: readonly {
  readonly of: (load: FittedLoad) => number | null;
  readonly asked: (inputs: WhatIfInputs) => number | null;
  readonly quantity: Quantity;
  readonly says: string;
}[] = [
  {
    of: (load) => load.relativeHumidityPercent,
    asked: (inputs) => inputs.relativeHumidityPercent,
    quantity: "percent",
    says: "humidity",
  },
  {
    of: (load) => load.bedDepthMetres,
    asked: (inputs) => inputs.bedDepthMetres,
    quantity: "bedDepth",
    says: "bed depth",
  },
  { of: (load) => load.celsius, asked: (inputs) => inputs.celsius, quantity: "temperature", says: "outside air" },
];

/** Which of the asked conditions the logs have never seen, in words. */
function refusalSentence(loads: readonly FittedLoad[], inputs: WhatIfInputs, units: UnitSystem): string {
  for (const { of, asked, quantity, says } of EDGES) {
    const value = asked(inputs);
    const seen = loads.map(of).filter((known) => known !== null);
    if (value === null || seen.length === 0) continue;
    const low = Math.min(...seen);
    const high = Math.max(...seen);
    if (value < low || value > high) {
      const side = value < low ? "below" : "above";
      return (
        `These logs hold no load at ${says} ${print(value, quantity, units)}: ` +
        `that is ${side} the ${print(low, quantity, units)} to ${print(high, quantity, units)} they cover, so there is no estimate.`
      );
    }
  }
  return "No load in these logs was much like this one in air, bed and load taken together, so there is no estimate.";
}

const known = (inputs: WhatIfInputs): KnownAtLoading => ({
  ...inputs,
  greenMoisturePercent: null,
  grainInKilograms: null,
});

/**
 * When a kiln loaded as described will be ready for the ramp and off, by the best model of the loads shown; or, in a
 * sentence, why these logs cannot say. Clock times leave a night's clock change out of account, since the question
 * names no date.
 */
export function answerWhatIf(result: KilnHoursResult, inputs: WhatIfInputs, units: UnitSystem): WhatIfAnswer {
  const whole = expectHours(result.kilnHours, known(inputs));
  if (whole === null) {
    return { kind: "refusal", sentence: result.kilnHours.tooLittle ?? "These logs hold too little for an estimate." };
  }
  if (whole.outsideExperience) {
    return { kind: "refusal", sentence: refusalSentence(whole.model.loads, inputs, units) };
  }
  const { estimate, low, high } = whole.prediction;
  const drying = dryingPart(result.dryingHours, inputs);
  const minutes = (hours: number): number => inputs.startedAtMinutes + hours * MINUTES_PER_HOUR;
  return {
    kind: "estimate",
    model: whole.model.kind,
    kilnHours: { estimate, low, high },
    dryingHours: drying,
    readyAt: drying === null ? null : minutes(drying.estimate),
    offAt: minutes(estimate),
    offEarliest: minutes(low),
    offLatest: minutes(high),
    latestStart: latestStart(inputs, high),
  };
}

function dryingPart(analysis: HoursAnalysis, inputs: WhatIfInputs) {
  const expected = expectHours(analysis, known(inputs));
  if (expected === null || expected.outsideExperience) return null;
  const { estimate, low, high } = expected.prediction;
  return { estimate, low, high };
}

/** The wanted finish is the first such clock time after loading. */
function latestStart({ startedAtMinutes, wantedFinishMinutes }: WhatIfInputs, upperHours: number): number | null {
  if (wantedFinishMinutes === null) return null;
  const finish = wantedFinishMinutes > startedAtMinutes ? wantedFinishMinutes : wantedFinishMinutes + MINUTES_PER_DAY;
  return finish - upperHours * MINUTES_PER_HOUR;
}
