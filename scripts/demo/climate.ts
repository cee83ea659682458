import { saturationPascals } from "./airTable.ts";
import { DAY, HOUR, localHour } from "./clock.ts";
import { randomStream } from "./random.ts";

/** Outside air, hour by hour. */
export interface Weather {
  /** First hour, ms UTC. */
  readonly from: number;
  readonly celsius: Float64Array;
  readonly relativeHumidityPercent: Float64Array;
}

const YEAR = 365.25 * DAY;
const JANUARY_20 = Date.UTC(2024, 0, 20);

/** 1 in the depth of winter, −1 at the height of summer. */
export const wintriness = (instant: number): number => Math.cos((2 * Math.PI * (instant - JANUARY_20)) / YEAR);

/**
 * An invented climate: dry winters about −3 °C with cold spells to −18, warm and damp summers about 23. Seasons, a
 * daily swing that clouds damp, fronts that come and go over some days, and a dew point that follows the air mass.
 */
export function simulateWeather(seed: number, from: number, to: number): Weather {
  const hours = Math.ceil((to - from) / HOUR) + 1;
  const front = randomStream(seed, "weather-front");
  const cloud = randomStream(seed, "weather-cloud");
  const damp = randomStream(seed, "weather-damp");
  const celsius = new Float64Array(hours);
  const relativeHumidityPercent = new Float64Array(hours);
  // Each follows itself with its own memory: h(t+1) = r·h(t) + √(1−r²)·noise, of standard deviation 1.
  const follow = (state: number, memoryHours: number, noise: number): number => {
    const r = Math.exp(-1 / memoryHours);
    return r * state + Math.sqrt(1 - r * r) * noise;
  };
  let airMass = front.normal();
  let sky = cloud.normal();
  let moisture = damp.normal();
  for (let h = 0; h < hours; h++) {
    const instant = from + h * HOUR;
    const winter = wintriness(instant);
    airMass = follow(airMass, 64, front.normal());
    sky = follow(sky, 30, cloud.normal());
    moisture = follow(moisture, 70, damp.normal());
    const clear = 1 / (1 + Math.exp(-1.3 * sky - 0.4 * airMass * winter * -1));
    const daily = 10 - 13.2 * winter + (3.7 + 1.3 * winter) * airMass;
    const swing = (1.1 + 2.6 * (1 - winter) * 0.5) * (0.4 + 1.2 * clear);
    const t = daily + swing * Math.cos((2 * Math.PI * (localHour(instant) - 15)) / 24);
    // Dew point below the day's mean: wide in the dry winter, narrow in the damp summer, never beyond what air masses do.
    const wide =
      (9 - 6.2 * (1 - winter) * 0.5) * (0.55 + 0.9 * clear) * Math.exp(0.55 * moisture - 0.12 * airMass * (1 - winter));
    const spread = 15 * (1 - Math.exp(-wide / 15));
    const dewPoint = Math.min(t - 0.25, daily - spread + 0.2 * swing);
    celsius[h] = t;
    relativeHumidityPercent[h] = (100 * saturationPascals(dewPoint)) / saturationPascals(t);
  }
  return { from, celsius, relativeHumidityPercent };
}

/** Outside air at any moment, by straight lines between the hours. */
export function airAt(weather: Weather, instant: number): { celsius: number; relativeHumidityPercent: number } {
  const x = (instant - weather.from) / HOUR;
  const i = Math.min(Math.max(0, Math.floor(x)), weather.celsius.length - 2);
  const share = x - i;
  const between = (column: Float64Array): number =>
    (column[i] as number) * (1 - share) + (column[i + 1] as number) * share;
  return { celsius: between(weather.celsius), relativeHumidityPercent: between(weather.relativeHumidityPercent) };
}
