/** Why data cannot carry a fit. */
export type FitFault =
  | { readonly kind: "too-few"; readonly observations: number; readonly needed: number }
  /** The predictor has one value throughout. */
  | { readonly kind: "constant"; readonly column: string; readonly observations: number }
  | { readonly kind: "constant-response"; readonly observations: number }
  /** The predictor follows exactly from those before it. */
  | { readonly kind: "collinear"; readonly column: string }
  /** One observation alone fixes a coefficient, so that nothing in the data can contradict it. */
  | {
      readonly kind: "single-observation";
      readonly column: string | null;
      readonly row: number;
      readonly observations: number;
    };

/** What the sentences call things. */
export interface FitWords {
  /** Plural: `loads`. */
  readonly observations: string;
  /** `kiln hours`. */
  readonly response: string;
}

export const plainWords: FitWords = { observations: "observations", response: "response" };

/** Whether `found`, which may be a result, is a fault instead. */
export function isFitFault(found: object): found is FitFault {
  return "kind" in found;
}

/** A fault as a sentence for a page. */
export function sayFitFault(fault: FitFault, words: FitWords = plainWords): string {
  switch (fault.kind) {
    case "too-few":
      return `The estimate needs ${fault.needed} ${words.observations} with all that it uses; so far there ${countedSoFar(fault.observations)}.`;
    case "constant":
      return `All ${fault.observations} ${words.observations} have the same ${fault.column}, so its effect cannot be told.`;
    case "constant-response":
      return `All ${fault.observations} ${words.observations} have the same ${words.response}, so there is nothing to explain.`;
    case "collinear":
      return `The logged ${fault.column} follows exactly from the other measures, so its own effect cannot be told.`;
    case "single-observation":
      return fault.column === null
        ? `One of the ${fault.observations} ${words.observations} alone would decide an effect, and no other could contradict it.`
        : `All but one of the ${fault.observations} ${words.observations} have the same ${fault.column}, so its effect would rest on that one alone.`;
  }
}

function countedSoFar(count: number): string {
  return count === 0 ? "are none" : count === 1 ? "is 1" : `are ${count}`;
}
