import type { UnitSystem } from "./unitSystem.ts";

/**
 * What a number measures, and so how it is shown. The value handed over is always in the unit kept inside:
 * degrees Celsius, metres, kilograms, hours, per cent, kilowatt hours, kilogram of water per kilogram of dry air; of a
 * laboratory's results EBC units of colour, degrees Windisch-Kolbach, milligrams per litre of wort or kilogram of malt.
 */
export type Quantity =
  | "temperature"
  | "temperatureDifference"
  | "bedDepth"
  | "mass"
  | "hours"
  | "percent"
  | "percentagePoints"
  | "energy"
  | "energyPerMass"
  | "power"
  | "humidityRatio"
  | "count"
  | "fraction"
  | "colour"
  | "diastaticPower"
  | "diastaticPowerDifference"
  | "alphaAmylase"
  | "wortContent"
  | "traceContent"
  | "viscosity";

/** How one quantity is shown in one system: shown = inside × factor + offset. */
export interface Shown {
  readonly unit: string;
  readonly factor: number;
  readonly offset: number;
  readonly decimals: number;
}

const same = (unit: string, decimals: number): Shown => ({ unit, factor: 1, offset: 0, decimals });

const metric: Readonly<Record<Quantity, Shown>> = {
  temperature: same("°C", 1),
  temperatureDifference: same("°C", 1),
  bedDepth: { unit: "cm", factor: 100, offset: 0, decimals: 1 },
  mass: same("kg", 0),
  hours: same("h", 1),
  percent: same("%", 1),
  percentagePoints: same("points", 1),
  energy: same("kWh", 0),
  energyPerMass: same("kWh/kg", 2),
  power: same("kW", 1),
  humidityRatio: { unit: "g/kg", factor: 1000, offset: 0, decimals: 1 },
  count: same("", 0),
  fraction: same("", 2),
  colour: same("EBC", 1),
  diastaticPower: same("°WK", 0),
  diastaticPowerDifference: same("°WK", 0),
  alphaAmylase: same("DU", 0),
  wortContent: same("mg/L", 0),
  traceContent: same("mg/kg", 2),
  viscosity: same("mPa s", 2),
};

const us: Readonly<Record<Quantity, Shown>> = {
  ...metric,
  temperature: { unit: "°F", factor: 1.8, offset: 32, decimals: 0 },
  temperatureDifference: { unit: "°F", factor: 1.8, offset: 0, decimals: 1 },
  bedDepth: { unit: "in", factor: 1 / 0.0254, offset: 0, decimals: 1 },
  mass: { unit: "lb", factor: 1 / 0.45359237, offset: 0, decimals: 0 },
  energyPerMass: { unit: "kWh/lb", factor: 0.45359237, offset: 0, decimals: 2 },
  // The inverse of the families in suffix.ts: 1.97 EBC a degree SRM, °WK = 3.5 °L − 16 (both from memory of the committees' usage).
  colour: { unit: "SRM", factor: 1 / 1.97, offset: 0, decimals: 1 },
  diastaticPower: { unit: "°L", factor: 1 / 3.5, offset: 16 / 3.5, decimals: 0 },
  diastaticPowerDifference: { unit: "°L", factor: 1 / 3.5, offset: 0, decimals: 0 },
  // One centipoise is one millipascal second, exactly.
  viscosity: same("cP", 2),
};

const systems: Readonly<Record<UnitSystem, Readonly<Record<Quantity, Shown>>>> = { metric, us };

/** The unit, conversion and usual number of decimals of `quantity` for readers of `system`. */
export function shownAs(quantity: Quantity, system: UnitSystem): Shown {
  return systems[system][quantity];
}

/** The value as a reader of `system` would say it, without rounding. */
export function toShown(insideValue: number, quantity: Quantity, system: UnitSystem): number {
  const { factor, offset } = shownAs(quantity, system);
  return insideValue * factor + offset;
}

/** The inverse of {@link toShown}: what a reader typed, back in the unit kept inside. */
export function fromShown(shownValue: number, quantity: Quantity, system: UnitSystem): number {
  const { factor, offset } = shownAs(quantity, system);
  return (shownValue - offset) / factor;
}
