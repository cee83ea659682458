import { expect, test } from "vitest";
import { relayCycle } from "../../src/malting/thermostat/relayCycle.ts";

const plant = {
  timeConstantMinutes: 30,
  heaterOnCelsius: 120,
  heaterOffCelsius: 20,
  switchOffCelsius: 67,
  switchOnCelsius: 63,
};

/** Worked out by hand from the closed form: 30 ln(57/53), 30 ln(47/43). */
test("relayCycle agrees with the worked example of a 30-minute plant held between 63 and 67 °C", () => {
  const cycle = relayCycle(plant);
  expect(cycle.onMinutes).toLieWithin(2.18278, 5e-6);
  expect(cycle.offMinutes).toLieWithin(2.66842, 1e-5);
  expect(cycle.periodMinutes).toLieWithin(4.85121, 1e-5);
  expect(cycle.duty).toLieWithin(0.44995, 5e-6);
  expect(cycle.meanCelsius).toLieWithin(64.99, 0.006);
});

/** The same plant stepped through in time, one second a step, with the switch acting late: no closed form used. */
function stepped(deadTimeMinutes: number, heaterOnCelsius: number) {
  const waiting: boolean[] = new Array(Math.round(deadTimeMinutes * 60)).fill(true);
  let air = 64;
  let relay = true;
  let heating = true;
  let [high, low, sum, seconds, onSeconds] = [-Infinity, Infinity, 0, 0, 0];
  let cycle = { sum: 0, seconds: 0, onSeconds: 0 };
  let started = false;
  for (let second = 0; second < 20 * 3600; second++) {
    if (air >= plant.switchOffCelsius) relay = false;
    else if (air <= plant.switchOnCelsius) relay = true;
    waiting.push(relay);
    const acts = waiting.shift() as boolean;
    if (second > 3600 && acts && !heating) {
      if (started) {
        sum += cycle.sum;
        seconds += cycle.seconds;
        onSeconds += cycle.onSeconds;
      }
      started = true;
      cycle = { sum: 0, seconds: 0, onSeconds: 0 };
    }
    heating = acts;
    const end = acts ? heaterOnCelsius : plant.heaterOffCelsius;
    air = end + (air - end) * Math.exp(-1 / 1800);
    if (!started) continue;
    high = Math.max(high, air);
    low = Math.min(low, air);
    cycle.sum += air;
    cycle.seconds += 1;
    cycle.onSeconds += acts ? 1 : 0;
  }
  return { high, low, mean: sum / seconds, duty: onSeconds / seconds };
}

test.each([
  [1, 120],
  [1, 100],
  [2, 120],
])(
  "relayCycle with %d min of dead time at %d °C agrees with the plant stepped through second by second",
  (dead, hot) => {
    const seen = stepped(dead, hot);
    const cycle = relayCycle({ ...plant, heaterOnCelsius: hot, deadTimeMinutes: dead });
    expect(cycle.highCelsius).toLieWithin(seen.high, 0.04);
    expect(cycle.lowCelsius).toLieWithin(seen.low, 0.04);
    expect(cycle.meanCelsius).toLieWithin(seen.mean, 0.05);
    expect(cycle.duty).toLieWithin(seen.duty, 0.005);
  },
);

test("relayCycle shows the middle falling by 0.33 K when the heater weakens, the thermostat untouched", () => {
  const middle = (heaterOnCelsius: number): number => {
    const { highCelsius, lowCelsius } = relayCycle({ ...plant, heaterOnCelsius, deadTimeMinutes: 1 });
    return (highCelsius + lowCelsius) / 2;
  };
  expect(middle(100) - middle(120)).toLieWithin(-0.33, 0.005);
});

test("relayCycle refuses switch points outside the plant's reach, and no time constant", () => {
  expect(() => relayCycle({ ...plant, switchOffCelsius: 121 })).toThrow(RangeError);
  expect(() => relayCycle({ ...plant, switchOnCelsius: 68 })).toThrow(RangeError);
  expect(() => relayCycle({ ...plant, timeConstantMinutes: 0 })).toThrow(RangeError);
  expect(() => relayCycle({ ...plant, deadTimeMinutes: -1 })).toThrow(RangeError);
});
