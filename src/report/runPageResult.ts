import type { MaltingLoss } from "../malting/massBalance.ts";
import type { Problem } from "../tables/problem.ts";
import type { LoadRow } from "./loadRow.ts";
import type { RunRow } from "./runRow.ts";
import type { AcrospireRun } from "./steepGerminationResult.ts";

/** The kiln logger's readings over one load, in time order; NaN where a probe was silent. */
export interface KilnCurve {
  /** Milliseconds UTC. */
  readonly at: Float64Array;
  readonly airOnCelsius: Float64Array;
  readonly airOffCelsius: Float64Array;
  readonly bedCelsius: Float64Array;
}

export interface RunPageResult {
  readonly run: RunRow;
  /** Usually one; several where the run was split. */
  readonly loads: readonly LoadRow[];
  /** By load; absent where the logger has nothing. */
  readonly curves: ReadonlyMap<string, KilnCurve>;
  /** Fitted and one-step-ahead kiln hours of its load, where the model could say. */
  readonly expectedHours: { readonly estimate: number; readonly low: number; readonly high: number } | null;
  /** Where its dry matter went; null where a mass or a moisture is not logged. */
  readonly loss: MaltingLoss | null;
  /** Kernels counted at unloading, bed by bed; null where none were. */
  readonly counted: AcrospireRun | null;
  readonly problems: readonly Problem[];
  /** Columns that the format does not know, as logged: name and value. */
  readonly otherColumns: readonly { readonly table: string; readonly column: string; readonly value: string }[];
  readonly previousRun: string | null;
  readonly nextRun: string | null;
}
