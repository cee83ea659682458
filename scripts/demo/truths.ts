/**
 * What was put into the invented house, so that tests can ask whether it is found. Pages never read this file.
 * Dates are the house's own calendar.
 */

/** Height of the invented place above the sea. */
export const ALTITUDE_METRES = 110;

export const DEMO_SEED = 20261031;
/** The logs end on this date, in the evening. */
export const LAST_DATE = "2026-10-31";
export const LAST_HOUR = 21.5;
export const DEMO_RUNS = 180;

/** From this date on the bed was laid shallower; logged as a change that alters bed_depth. */
export const SHALLOWER_BED = { on: "2025-09-15", beforeMetres: 0.168, afterMetres: 0.15 };

/**
 * The kiln thermostat switches at set point plus this. It crept down, was calibrated, held, and has begun again in the
 * last two months: dates between which it moves at an even rate, in kelvins a month of 30.44 days.
 */
export const THERMOSTAT_DRIFT = {
  kiln: "K1",
  first: { from: "2024-12-15", kelvinPerMonth: -0.3 },
  calibratedOn: "2025-06-24",
  /** What calibration left behind. */
  afterCalibration: 0.1,
  second: { from: "2026-09-01", kelvinPerMonth: -0.55 },
};

/** A mechanical thermostat does not switch at one point: standard deviation between loads, kelvins (common practice, no source). */
export const THERMOSTAT_REPEATS_WITHIN = 0.12;

/** Width of the thermostat's switching: off this far above its middle, on this far below. */
export const THERMOSTAT_HALF_DIFFERENTIAL = 1.7;

/** The fan ran on a thermostat of its own, on when warm and off when cool, while the heater's works the other way round. */
export const FAN_THERMOSTAT = { from: "2024-11-18", to: "2025-03-12", setCelsius: 45 };

/**
 * The fan belt slipped: the share of the air that still came through. A belt that slips runs hot and then slips more, so
 * that in the cure most of the air was gone: those beds were late and came off damper. The repair was logged, the
 * slipping was not.
 */
export const SLIPPING_BELT = { from: "2026-02-05", repairedOn: "2026-04-02", airShare: 0.9, cureAirShare: 0.38 };

/** The logger read high until it was checked and set right. Kelvins to be taken off its air-on readings. */
export const LOGGER_ERROR = { checkedOn: "2024-10-14", atZeroCelsius: 0.9, perKelvin: 0.006 };

/** One lot, of one variety, germinated and took up water unevenly; it was worked for two lots' time, as the next never came. */
export const POOR_LOT = { lot: "L25-04", variety: "Sivrane", neverCame: "L25-05" };

/** A scale left mis-set for one batch, the first from this date on: what it showed, as a share of the truth. */
export const MIS_SET_SCALE = { from: "2024-09-05", share: 0.93 };

/** Logged as changes that were expected to help; their true effect on kiln hours is none. */
export const CHANGE_WITHOUT_EFFECT = { on: "2026-05-18" };

const MONTH_DAYS = 30.44;
const daysBetween = (from: string, to: string): number => (Date.parse(to) - Date.parse(from)) / 86_400_000;

/** The thermostat's true offset on a date, kelvins: its cycle's middle is at set point plus this. */
export function thermostatOffset(date: string): number {
  const { first, calibratedOn, afterCalibration, second } = THERMOSTAT_DRIFT;
  if (date < first.from) return 0;
  if (date < calibratedOn) return (first.kelvinPerMonth * daysBetween(first.from, date)) / MONTH_DAYS;
  if (date < second.from) return afterCalibration;
  return afterCalibration + (second.kelvinPerMonth * daysBetween(second.from, date)) / MONTH_DAYS;
}

/** How much the logger's air-on probe read too high at a true temperature, on a date. */
export function loggerError(date: string, celsius: number): number {
  return date < LOGGER_ERROR.checkedOn ? LOGGER_ERROR.atZeroCelsius + LOGGER_ERROR.perKelvin * celsius : 0;
}

/** Why a load does not show what an undisturbed one would. */
export type LoadFault =
  | "slipping belt"
  | "thermostat drift"
  | "fan thermostat"
  | "power-limited"
  | "mis-set scale"
  | "poor lot";

/** The logger's own slips: minutes that are missing, that stand still, one that jumps; and files that overlap. */
export const LOGGER_SLIPS = {
  gap: { load: 33, fromMinute: 260, minutes: 95 },
  stuck: { load: 71, fromMinute: 300, minutes: 140 },
  spike: { load: 118, atMinute: 301, shows: "93.4" },
  overlapAt: ["2024-q4", "2026-q1"],
};

/** Days without weather, when the station's battery was flat. */
export const WEATHER_GAP = { from: "2025-08-04", to: "2025-08-11" };

/** Slips of the pen: a month that does not exist, so that the row cannot be read, and a moisture without its point. */
export const LOG_SLIPS = {
  monthThirteen: { load: "F079" },
  moistureWithoutPoint: { run: "-052", written: "436" },
};
