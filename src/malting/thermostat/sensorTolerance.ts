/**
 * How far a *new* sensor may be off and still be within its standard, and where pure water boils. Used wire drifts:
 * the standards' tables hold for unused material only, and a used thermocouple is compared in place rather than
 * calibrated again (tables quoting IEC 60584 and ASTM E230, read in copies).
 */
import { boilingPoint, pressureAtAltitude } from "../moistAir.ts";

export type SensorKind =
  | "Pt100 class AA"
  | "Pt100 class A"
  | "Pt100 class B"
  | "Pt100 class C"
  | "type K class 1"
  | "type K class 2"
  | "type T class 1"
  | "type T class 2"
  | "type K special"
  | "type K standard"
  | "type T special"
  | "type T standard";

interface Rule {
  readonly standard: string;
  readonly source: string;
  /** For resistance thermometers the two are added; for thermocouples the larger one holds. */
  readonly joined: "sum" | "larger";
  readonly fixedKelvin: number;
  readonly perDegree: number;
  /** Highest temperature for which the row stands here, °C; the lowest is 0, as in every row read. */
  readonly upToCelsius: number;
}

const COPY = "read in secondary copies of the standard's table";

const platinum = (fixedKelvin: number, perDegree: number, upToCelsius: number): Rule => ({
  standard: "IEC 60751",
  source: COPY,
  joined: "sum",
  fixedKelvin,
  perDegree,
  upToCelsius,
});
const thermocouple = (standard: string, fixedKelvin: number, perDegree: number, upToCelsius: number): Rule => ({
  standard,
  source: COPY,
  joined: "larger",
  fixedKelvin,
  perDegree,
  upToCelsius,
});

const rules: Readonly<Record<SensorKind, Rule>> = {
  "Pt100 class AA": platinum(0.1, 0.0017, 150),
  "Pt100 class A": platinum(0.15, 0.002, 300),
  "Pt100 class B": platinum(0.3, 0.005, 400),
  "Pt100 class C": platinum(0.6, 0.01, 400),
  "type K class 1": thermocouple("IEC 60584", 1.5, 0.004, 1000),
  "type K class 2": thermocouple("IEC 60584", 2.5, 0.0075, 1200),
  "type T class 1": thermocouple("IEC 60584", 0.5, 0.004, 350),
  "type T class 2": thermocouple("IEC 60584", 1, 0.0075, 350),
  "type K special": thermocouple("ASTM E230", 1.1, 0.004, 1260),
  "type K standard": thermocouple("ASTM E230", 2.2, 0.0075, 1260),
  "type T special": thermocouple("ASTM E230", 0.5, 0.004, 370),
  "type T standard": thermocouple("ASTM E230", 1, 0.0075, 370),
};

export interface SensorTolerance {
  /** Either side, K. */
  readonly plusMinusKelvin: number;
  readonly standard: string;
  /** How the value was come by, in words that a page can print. */
  readonly source: string;
}

/**
 * What the standard allows a new sensor to be off by at a temperature.
 *
 * @throws {RangeError} below 0 °C or above the range of that row
 * @example sensorTolerance("Pt100 class B", 80).plusMinusKelvin // 0.70
 */
export function sensorTolerance(kind: SensorKind, celsius: number): SensorTolerance {
  const { standard, source, joined, fixedKelvin, perDegree, upToCelsius } = rules[kind];
  if (!(celsius >= 0 && celsius <= upToCelsius)) {
    throw new RangeError(`sensorTolerance for ${kind} holds from 0 to ${upToCelsius} °C; got ${celsius}`);
  }
  const share = perDegree * celsius;
  return {
    plusMinusKelvin: joined === "sum" ? fixedKelvin + share : Math.max(fixedKelvin, share),
    standard,
    source,
  };
}

export interface BoilingReference {
  readonly celsius: number;
  readonly pressurePascals: number;
  readonly source: string;
}

/**
 * What a sound thermometer reads in gently boiling water at this height, for a check of the logger. Weather moves it: 10 hPa
 * is about 0.3 K, so the barometer's own (station) pressure through `boilingPoint` is better where it is known.
 *
 * Source: ASHRAE Fundamentals 2017, ch. 1, eq. 3 (standard atmosphere) and the inverse of eq. 6.
 *
 * @throws {RangeError} outside −5 000 to 11 000 m
 * @example boilingPointAtAltitude(1000).celsius // 96.65
 */
export function boilingPointAtAltitude(altitudeMetres: number): BoilingReference {
  const pressurePascals = pressureAtAltitude(altitudeMetres);
  return {
    celsius: boilingPoint(pressurePascals),
    pressurePascals,
    source: "computed from the standard atmosphere and saturated steam (ASHRAE Fundamentals 2017, ch. 1)",
  };
}
