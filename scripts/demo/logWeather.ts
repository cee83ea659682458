import { HOUR, instantAt, utcText } from "./clock.ts";
import { randomStream } from "./random.ts";
import { LOGS_END } from "./rows.ts";
import type { SimulatedHouse } from "./simulateHouse.ts";
import { WEATHER_GAP } from "./truths.ts";

/** The station's files, one a year: hourly, humidity in whole per cent, with its own small errors and one gap. */
export function logWeather(house: SimulatedHouse): ReadonlyMap<string, string> {
  const files = new Map<string, string[]>();
  const r = randomStream(house.options.seed, "station");
  const { from, celsius, relativeHumidityPercent } = house.weather;
  const gapFrom = instantAt(WEATHER_GAP.from, 9);
  const gapTo = instantAt(WEATHER_GAP.to, 15);
  for (let h = 0; h < celsius.length; h++) {
    const at = from + h * HOUR;
    if (at > LOGS_END) break;
    const humidity = Math.min(100, Math.max(3, Math.round((relativeHumidityPercent[h] as number) + 0.8 * r.normal())));
    const air = (Math.round(10 * ((celsius[h] as number) + 0.1 * r.normal())) / 10).toFixed(1);
    if (house.options.quiet === undefined && at >= gapFrom && at < gapTo) continue;
    const text = utcText(at);
    const file = `weather/station-${text.slice(0, 4)}.csv`;
    const lines = files.get(file) ?? ["at_utc,ambient_rh_pct,ambient_c"];
    files.set(file, lines);
    lines.push(`${text},${humidity},${air}`);
  }
  return new Map([...files].map(([path, lines]) => [path, `${lines.join("\n")}\n`]));
}
