import type { Interval } from "../analysis/regressionFit.ts";
import type { DryingAirModel, HumidityDepthModel, WhatIfInputs } from "./kilnHoursResult.ts";
import type { WhatIfText } from "./view.ts";

/**
 * When a kiln loaded under stated conditions will be dry. Moments are minutes after local midnight of the day it was
 * loaded, so 06:40 the next morning is 1840. Intervals are 90 % prediction intervals.
 */
export interface WhatIfEstimate {
  readonly kind: "estimate";
  readonly model: HumidityDepthModel["kind"] | DryingAirModel["kind"];
  readonly kilnHours: Interval;
  /** Loading to the start of the cure; null where the logs do not carry it. */
  readonly dryingHours: Interval | null;
  readonly readyAt: number | null;
  readonly offAt: number;
  readonly offEarliest: number;
  readonly offLatest: number;
  /** Wanted finish less the upper end of the interval; may be negative (the day before). Null where no finish is wanted. */
  readonly latestStart: number | null;
}

/** Why nothing is estimated: `No load in these logs was deeper than 19 cm.` */
export interface WhatIfRefusal {
  readonly kind: "refusal";
  readonly sentence: string;
  /** The field it concerns, where what was typed there could not be read. */
  readonly field?: keyof WhatIfText;
}

export type WhatIfAnswer = WhatIfEstimate | WhatIfRefusal;

/** What the report hands to the page: the what-if worked out on the models of the current view. */
export type AnswerWhatIf = (inputs: WhatIfInputs) => WhatIfAnswer;
