import type { KilnThermostat } from "../../report/thermostatResult.ts";

/** Where a kiln's entries stand on the page. */
export interface KilnPlace {
  readonly kiln: KilnThermostat;
  /** Ends every id of the kiln: empty for the only kiln of a page, `-2` for the second. */
  readonly suffix: string;
  /** `Kiln K2`, for the margin; null for the only kiln. */
  readonly note: string | undefined;
}

export const kilnPlaces = (kilns: readonly KilnThermostat[]): readonly KilnPlace[] =>
  kilns.map((kiln, i) => ({
    kiln,
    suffix: i === 0 ? "" : `-${i + 1}`,
    note: kilns.length === 1 ? undefined : `Kiln ${kiln.kiln}`,
  }));
