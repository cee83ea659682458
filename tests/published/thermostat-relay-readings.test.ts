import { describe, expect, test } from "vitest";
import { type HoldSetting, holdOffset } from "../../src/malting/thermostat/holdOffset.ts";
import { readingQuality } from "../../src/malting/thermostat/readingQuality.ts";
import { relayCycle } from "../../src/malting/thermostat/relayCycle.ts";
import { turnProminence } from "../../src/malting/thermostat/turningPoints.ts";
import { examplePlant, fireRelayKiln, type Logging, logRelayKiln, MINUTE } from "../malting/thermostat/relayKiln.ts";

const minutes = 10 * 60;
const kiln = fireRelayKiln({ plant: examplePlant, startCelsius: 20, minutes });

function read(logging: Omit<Logging, "minutes">) {
  const readings = logRelayKiln(kiln, { minutes, ...logging });
  const { resolutionKelvin, noiseKelvin } = readingQuality(readings);
  const setting: HoldSetting = {
    setCelsius: 65,
    prominenceKelvin: turnProminence(resolutionKelvin, noiseKelvin),
    longestStep: 5 * logging.stepSeconds * 1000,
    usualStep: logging.stepSeconds * 1000,
    firstRiseKelvinPerMinute: null,
  };
  return holdOffset(readings, { from: 30 * MINUTE, to: minutes * MINUTE }, setting);
}

/**
 * The closed form, worked by hand: τ 30 min, 120 and 20 °C, 63 to 67 °C: on 2.18278, off 2.66842, period 4.85121 min, duty
 * 0.44995. The kiln is followed exactly from switch to switch and read at the step named.
 */
describe("the relay cycle recovered from readings", () => {
  const plain = [5, 10, 15, 20, 30].map((stepSeconds) => ({ stepSeconds, heater: false, noiseKelvin: 0 }));
  const logged = plain.map((logging) => ({ ...logging, heater: true }));
  const noisy = [5, 15, 30].flatMap((stepSeconds) =>
    [false, true].map((heater) => ({ stepSeconds, heater, noiseKelvin: 0.1, resolutionKelvin: 0.1 })),
  );
  test.each([...plain, ...logged, ...noisy])("holdOffset finds times, duty and switch points from %o", (logging) => {
    const { shape, duty, readingsACycle, meanCelsius } = read(logging);
    expect(shape?.periodMinutes).toAgreeWithin(4.85121, 0.002);
    expect(shape?.onMinutes).toAgreeWithin(2.18278, 0.02);
    expect(shape?.offMinutes).toAgreeWithin(2.66842, 0.02);
    expect(duty).toLieWithin(0.44995, 0.008);
    expect(shape?.highCelsius).toLieWithin(67, 0.12);
    expect(shape?.lowCelsius).toLieWithin(63, 0.12);
    expect(shape?.switchOffCelsius).toLieWithin(67, 0.2);
    expect(shape?.switchOnCelsius).toLieWithin(63, 0.2);
    expect(readingsACycle).toAgreeWithin((4.85121 * 60) / logging.stepSeconds, 0.01);
    expect(meanCelsius).toLieWithin(64.995, 0.02);
  });

  test.each([40, 45, 60, 75, 90, 120])(
    "holdOffset gives the mean of 64.99 at a reading every %d s, and no swing, period or switch point",
    (stepSeconds) => {
      for (const heater of [false, true]) {
        const { shape, meanCelsius, offsetKelvin, standardErrorKelvin, readingsACycle, sentences } = read({
          stepSeconds,
          heater,
        });
        expect(meanCelsius).toLieWithin(64.995, 0.03);
        expect(offsetKelvin).toLieWithin(-0.005, 0.03);
        expect(standardErrorKelvin as number).toBeLessThan(0.05);
        expect(shape).toBeNull();
        expect(readingsACycle as number).toBeLessThan(8);
        expect(sentences.join(" ")).toMatch(/need 8/);
      }
    },
  );

  test("dead time moves middle and mean with the heater's power: the findings' −0.33 K of the middle", () => {
    const middles = [120, 100].map((heaterOnCelsius) => {
      const plant = { ...examplePlant, heaterOnCelsius, deadTimeMinutes: 1 };
      const weaker = fireRelayKiln({ plant, startCelsius: 20, minutes });
      const readings = logRelayKiln(weaker, { stepSeconds: 5, minutes });
      const found = holdOffset(
        readings,
        { from: 40 * MINUTE, to: minutes * MINUTE },
        { setCelsius: 65, prominenceKelvin: 0.3, longestStep: MINUTE, usualStep: 5000, firstRiseKelvinPerMinute: null },
      );
      const expected = relayCycle(plant);
      expect(found.meanCelsius).toLieWithin(expected.meanCelsius, 0.01);
      expect(found.shape?.highCelsius).toLieWithin(expected.highCelsius, 0.02);
      expect(found.shape?.lowCelsius).toLieWithin(expected.lowCelsius, 0.02);
      return ((found.shape?.highCelsius ?? 0) + (found.shape?.lowCelsius ?? 0)) / 2;
    });
    expect((middles[1] as number) - (middles[0] as number)).toLieWithin(-0.33, 0.02);
  });
});
