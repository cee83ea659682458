const NAMES: Readonly<Record<string, string>> = {
  intercept: "constant, h",
  relativeHumidityPercent: "relative humidity, h per point",
  bedDepthMetres: "bed depth, h per metre",
  dryAirNeededTonnes: "dry air needed, h per tonne",
};

/** A coefficient's name in words, with its unit; one without words keeps its own name. */
export const printedTermName = (name: string): string => NAMES[name] ?? name;
