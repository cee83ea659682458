import type { UnitSystem } from "../units/unitSystem.ts";
import type { AirBasis } from "./kilnHoursResult.ts";

/** What a reader has chosen. It stands in the address and nowhere else; the built pages use {@link wholeView}. */
export interface View {
  /** Local dates, `2026-01-31`, both inclusive, of loading. */
  readonly from: string | null;
  readonly to: string | null;
  readonly variety: string | null;
  readonly kiln: string | null;
  /** Runs left out by hand. */
  readonly without: readonly string[];
  /** Null: as the house has it. */
  readonly units: UnitSystem | null;
  readonly air: AirBasis | null;
  readonly whatIf: Partial<WhatIfText>;
  readonly sort: string | null;
  readonly search: string | null;
  /** For `runs/?run=`. */
  readonly run: string | null;
}

/** The what-if fields as typed, in the reader's own units, so that the address says what the reader typed. */
export interface WhatIfText {
  readonly humidity: string;
  readonly temperature: string;
  readonly depth: string;
  readonly load: string;
  readonly setPoint: string;
  readonly start: string;
  readonly finish: string;
}
