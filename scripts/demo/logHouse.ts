import { addDays, TIME_ZONE } from "./clock.ts";
import { KILN } from "./fan.ts";
import type { Row } from "./rows.ts";
import * as truths from "./truths.ts";

/** The house named its baseline then, with nothing known of a belt; 24 batches of each variety would take it a year. */
const BASELINE_ENDS = "2026-01-31";

/** Why a house took the batches that it did for its charts' limits, and their dates. */
export interface NamedDates {
  readonly why: string;
  readonly from: string;
  readonly to: string;
}

const DEMO_BASELINE: NamedDates = {
  why: "since the bed was laid shallower: its first autumn and winter",
  from: truths.SHALLOWER_BED.on,
  to: BASELINE_ENDS,
};
/** A quiet house has changed nothing, and can wait for a whole year with its seasons. */
export const QUIET_BASELINE: NamedDates = { why: "from its first year", from: "2024-08-01", to: "2025-08-31" };

/**
 * Settings of the invented house.
 *
 * @param baseline what it has named for its charts
 */
export function houseToml({ why, from, to } = DEMO_BASELINE): string {
  return `# An invented house: see README.md in this folder.
name = "Ostrivel Malthouse"
time_zone = "${TIME_ZONE}"
units = "metric"
date_order = "ymd"
altitude_m = ${truths.ALTITUDE_METRES}

[[kilns]]
id = "${KILN.id}"
floor_m2 = ${KILN.floorSquareMetres}
heater_kw = ${KILN.heaterKilowatts}
fan_m3_h = ${KILN.fanCubicMetresPerHour}
probe_at_bulb = true

[tolerances]
thermostat_c = 1.5
final_moisture_pct = 0.6

[costs]
currency = "EUR"
kwh = 0.17
labour_hour = 21.0
malt_kg = 1.4
refused_batch = 280.0

# The control charts' limits ${why}.
[baselines]
any = "${from} to ${to}"

[checks]
logger_days = 100

[shared]
contact = "the maltster at Ostrivel"
note = "Every batch is one variety from one grain lot."
show_growers = false
`;
}

/** What the house's day book says. Not all that happened is in it: the belt slipped for weeks before it was found. */
export function logEvents(missetDate: string): Row[] {
  const rows: (readonly [string, string, string, string, string])[] = [
    [
      addDays(missetDate, 2),
      "calibration",
      "scale",
      "scale found mis-set, read 7 % low; set right with test weights",
      "",
    ],
    [truths.LOGGER_ERROR.checkedOn, "calibration", "logger", "air-on probe held against reference, adjusted", ""],
    [truths.FAN_THERMOSTAT.from, "change", "kiln", "fan put on a thermostat of its own for the cold months", "fan_set"],
    ["2025-02-03", "incident", "steep", "water off for an hour in the second wet stand", ""],
    [truths.FAN_THERMOSTAT.to, "change", "kiln", "fan runs throughout again", "fan_set"],
    [
      truths.THERMOSTAT_DRIFT.calibratedOn,
      "calibration",
      "thermostat",
      "kiln thermostat set right against reference",
      "",
    ],
    [truths.SHALLOWER_BED.on, "change", "kiln", "bed laid shallower, about 15 cm", "bed_depth"],
    [truths.SHALLOWER_BED.on, "new-baseline", "kiln", "shallower bed", ""],
    ["2025-11-24", "repair", "cleaning", "spout of the rootlet cleaner mended", ""],
    [truths.SLIPPING_BELT.repairedOn, "repair", "kiln", "fan belt found slack and shiny; new belt, tension set", ""],
    [truths.CHANGE_WITHOUT_EFFECT.on, "change", "kiln", "green malt carried in from the other door", ""],
    ["2026-08-17", "incident", "germination", "room cooler tripped overnight", ""],
  ];
  return rows.map(([on, kind, scope, what, alters]) => ({ on, kind, scope, what, alters }));
}

export function logTargets(): Row[] {
  const rows: (readonly [string, string, string, string, string])[] = [
    ["any", "final_moisture_pct", "3.6", "4.4", "5"],
    ["barley", "dry_yield_pct", "89.5", "91", ""],
    ["wheat", "dry_yield_pct", "90", "91.5", ""],
    ["barley", "steep_out_moisture_pct", "43", "44.3", "46"],
    ["wheat", "steep_out_moisture_pct", "41.5", "42.8", "44.5"],
    // It takes up water more slowly than the other wheat, and the house has learnt to steep it a little drier.
    ["Oldruva", "steep_out_moisture_pct", "40.8", "42", "43.8"],
    ["any", "acrospire_mean", "0.65", "0.78", "0.92"],
    ["any", "acrospire_overgrown_pct", "", "", "15"],
    ["any", "kiln_hours_over_expected", "-1.5", "0", "1.5"],
    ["barley", "extract_fine_dry_pct", "80", "81.5", ""],
    ["wheat", "extract_fine_dry_pct", "82", "84", ""],
    ["any", "colour_ebc", "2.5", "3.6", "5"],
    ["barley", "friability_pct", "80", "86", ""],
    ["barley", "beta_glucan_mg_l", "", "", "180"],
    ["any", "don_mg_kg", "", "", "0.75"],
  ];
  return rows.map(([variety, measure, low, target, high]) => ({ variety, measure, low, target, high }));
}
