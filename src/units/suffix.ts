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

/**
 * Colour of wort: EBC units are 1.97 times SRM degrees (both at 430 nm). From memory of the analysis committees' usage;
 * the visual EBC scale before 1991 followed another line, so a house that copies old certificates converts them first.
 */
export const colourFamily: UnitFamily = {
  inside: "ebc",
  suffixes: [
    { suffix: "ebc", label: "EBC", factor: 1, offset: 0 },
    { suffix: "srm", label: "SRM", factor: 1.97, offset: 0 },
  ],
};

/** Diastatic power: degrees Windisch-Kolbach = 3.5 × degrees Lintner − 16. From memory of ASBC and EBC usage. */
export const diastaticPowerFamily: UnitFamily = {
  inside: "wk",
  suffixes: [
    { suffix: "wk", label: "°WK", factor: 1, offset: 0 },
    { suffix: "lintner", label: "°L", factor: 3.5, offset: -16 },
  ],
};
