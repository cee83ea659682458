/**
 * The unit suffixes a log column may end with, and what each means in the unit kept inside.
 *
 * A log column carries its unit in its name and nowhere else (`bed_depth_cm`, `bed_depth_in`). Inside, the same column
 * has one name and one unit (`bed_depth_m`). Conversion is always affine: inside = value × factor + offset.
 */
export interface UnitSuffix {
  /** As it stands at the end of a log column's name, without the underscore. */
  readonly suffix: string;
  /** How it is said to a reader. */
  readonly label: string;
  readonly factor: number;
  readonly offset: number;
}

/** A family of suffixes of which a log file may use any one. `inside` names the unit kept in tables and in SQL. */
export interface UnitFamily {
  readonly inside: string;
  readonly suffixes: readonly UnitSuffix[];
}

/** Pound and inch are exact by the international yard and pound agreement of 1959 (NIST SP 811, appendix B.8). */
const KILOGRAMS_PER_POUND = 0.45359237;
const METRES_PER_INCH = 0.0254;

export const massFamily: UnitFamily = {
  inside: "kg",
  suffixes: [
    { suffix: "kg", label: "kg", factor: 1, offset: 0 },
    { suffix: "lb", label: "lb", factor: KILOGRAMS_PER_POUND, offset: 0 },
  ],
};

export const temperatureFamily: UnitFamily = {
  inside: "c",
  suffixes: [
    { suffix: "c", label: "°C", factor: 1, offset: 0 },
    { suffix: "f", label: "°F", factor: 5 / 9, offset: -160 / 9 },
  ],
};

export const bedDepthFamily: UnitFamily = {
  inside: "m",
  suffixes: [
    { suffix: "cm", label: "cm", factor: 0.01, offset: 0 },
    { suffix: "in", label: "in", factor: METRES_PER_INCH, offset: 0 },
  ],
};
