import { stringify } from "smol-toml";
import type { House, NamedBaseline } from "./house.ts";

/** The settings that files of the format itself need: how other files were written is no longer true of them. */
export type HouseSettings = Omit<House, "files" | "dateOrder" | "shared">;

/** Only what is said: TOML has no blank value. */
function said(entries: Readonly<Record<string, string | number | boolean | null>>): Record<string, unknown> {
  return Object.fromEntries(Object.entries(entries).filter(([, value]) => value !== null));
}

const baselineText = ({ runs, from, to }: NamedBaseline): unknown => (runs === null ? `${from} to ${to}` : [...runs]);

/** A house.toml that `readHouse` reads as these settings again. */
export function houseText(house: HouseSettings): string {
  const { name, timeZone, units, altitudeMetres, kilns, tolerances, costs, baselines, checks } = house;
  return `${stringify({
    name,
    time_zone: timeZone,
    units,
    altitude_m: altitudeMetres,
    kilns: kilns.map(({ id, floorSquareMetres, heaterKilowatts, fanCubicMetresPerHour, probeAtBulb }) =>
      said({
        id,
        floor_m2: floorSquareMetres,
        heater_kw: heaterKilowatts,
        fan_m3_h: fanCubicMetresPerHour,
        probe_at_bulb: probeAtBulb,
      }),
    ),
    tolerances: { thermostat_c: tolerances.thermostatCelsius, ...tolerances.measures },
    costs: said({
      currency: costs.currency,
      kwh: costs.perKilowattHour,
      labour_hour: costs.perLabourHour,
      malt_kg: costs.perKilogramMalt,
      refused_batch: costs.perRefusedBatch,
    }),
    baselines: Object.fromEntries(baselines.map((baseline) => [baseline.variety, baselineText(baseline)])),
    checks: { logger_days: checks.loggerDays },
  })}\n`;
}
