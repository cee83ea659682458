import { localDate, MINUTE, utcText } from "./clock.ts";
import { KILN } from "./fan.ts";
import { randomStream } from "./random.ts";
import { LOGS_END } from "./rows.ts";
import type { HouseOptions, SimulatedHouse, SimulatedLoad } from "./simulateHouse.ts";
import { FAN_THERMOSTAT, LOGGER_SLIPS, loggerError } from "./truths.ts";

const tenth = (value: number): string => (Math.round(value * 10) / 10).toFixed(1);

/** The lines of one firing as the logger wrote them, a minute apart. */
function linesOf({ seed, quiet }: HouseOptions, load: SimulatedLoad, withFan: boolean): string[] {
  const { trace } = load.fired;
  if (!trace) return [];
  const r = randomStream(seed, "logger", load.planned.index);
  const date = localDate(load.planned.loadedAt);
  const { gap, stuck, spike } = LOGGER_SLIPS;
  const slipped = quiet === undefined ? load.planned.index : null;
  const lines: string[] = [];
  let held: readonly [string, string, string] | null = null;
  for (let m = 0; m < trace.airOn.length; m++) {
    const at = load.planned.loadedAt + m * MINUTE;
    if (at > LOGS_END) break;
    const airOn = trace.airOn[m] as number;
    let values: readonly [string, string, string] = [
      tenth(airOn + (quiet === undefined ? loggerError(date, airOn) : load.planted.loggerKelvin) + 0.08 * r.normal()),
      tenth((trace.airOff[m] as number) + 0.08 * r.normal()),
      tenth((trace.bed[m] as number) + 0.08 * r.normal()),
    ];
    if (slipped === gap.load && m >= gap.fromMinute && m < gap.fromMinute + gap.minutes) continue;
    if (slipped === stuck.load && m >= stuck.fromMinute && m < stuck.fromMinute + stuck.minutes) {
      held ??= values;
      values = held;
    }
    if (slipped === spike.load && m === spike.atMinute) values = [spike.shows, values[1], values[2]];
    const fan = withFan ? `,${trace.fanOn[m]}` : "";
    lines.push(`${KILN.id},${utcText(at)},${values.join(",")},${trace.heaterOn[m]}${fan}`);
  }
  return lines;
}

/**
 * The logger's files, one a quarter. In two of them the download began a firing too early, so that its readings stand in
 * two files. The fan's state is recorded while it had its own thermostat.
 */
export function logReadings(house: SimulatedHouse): ReadonlyMap<string, string> {
  const files = new Map<string, string[]>();
  let last: { file: string; load: SimulatedLoad } | null = null;
  for (const load of house.loads) {
    const date = load.planned.date;
    const file = `readings/K1-${date.slice(0, 4)}-q${Math.ceil(Number(date.slice(5, 7)) / 3)}.csv`;
    const withFan = fanRecorded(file);
    let lines = files.get(file);
    if (!lines) {
      lines = [`kiln,at_utc,air_on_c,air_off_c,bed_c,heater_on${withFan ? ",fan_on" : ""}`];
      files.set(file, lines);
      const repeats = house.options.quiet === undefined && LOGGER_SLIPS.overlapAt.includes(file.slice(-11, -4));
      if (last && repeats) lines.push(...linesOf(house.options, last.load, withFan));
    }
    lines.push(...linesOf(house.options, load, withFan));
    last = { file, load };
  }
  return new Map([...files].map(([path, lines]) => [path, `${lines.join("\n")}\n`]));
}

/** Whether this quarter's file has the fan's state: any quarter that the fan's thermostat was in use. */
function fanRecorded(file: string): boolean {
  const quarter = file.slice(-11, -4);
  const of = (date: string): string => `${date.slice(0, 4)}-q${Math.ceil(Number(date.slice(5, 7)) / 3)}`;
  return quarter >= of(FAN_THERMOSTAT.from) && quarter <= of(FAN_THERMOSTAT.to);
}
