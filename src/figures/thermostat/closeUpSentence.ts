import type { LoadRow } from "../../report/loadRow.ts";
import { printClock, printMoment } from "../../units/instant.ts";
import { print, printNumber } from "../../units/print.ts";
import type { FigureSettings } from "../figureSettings.ts";
import type { CloseUpHold } from "./closeUpHold.ts";
import { degreeWords } from "./degreeWords.ts";

/**
 * What was read from the hold that the close-up lies in, and why anything is not claimed.
 *
 * @param probeAtBulb elsewhere mean and switch points are said as the probe reads them, and no offset is
 */
export function closeUpSentence(
  load: LoadRow,
  hold: CloseUpHold,
  settings: FigureSettings,
  probeAtBulb: boolean,
): string {
  const { units, timeZone } = settings;
  const celsius = (value: number): string => print(value, "temperature", units, { decimals: 1 });
  const { size } = degreeWords(settings);
  const when = `${load.runs.join(", ")}, ${printMoment(hold.from, timeZone)} to ${printClock(hold.to, timeZone)}`;
  const set = hold.setCelsius === null ? "no set point is logged" : `set to ${celsius(hold.setCelsius)}`;
  const off = !probeAtBulb
    ? " as the logger’s probe reads it, away from the thermostat’s bulb"
    : hold.offsetKelvin === null
      ? ""
      : `, ${size(hold.offsetKelvin)} ${hold.offsetKelvin < 0 ? "under" : "over"} its set point`;
  const mean =
    hold.meanCelsius === null ? "" : ` The mean over the hold’s whole cycles is ${celsius(hold.meanCelsius)}${off}.`;
  const duty = hold.duty === null ? "" : `, heater on ${printNumber(100 * hold.duty, 0)} % of the time`;
  const { switchOffCelsius, switchOnCelsius, swingKelvin, periodMinutes } = hold;
  const cycles =
    switchOffCelsius === null || switchOnCelsius === null || swingKelvin === null || periodMinutes === null
      ? ""
      : ` It switches off ${probeAtBulb ? "at" : "when the probe reads"} ${celsius(switchOffCelsius)} and on at ${celsius(switchOnCelsius)}; air on swings by ${size(swingKelvin)} every ${printNumber(periodMinutes, 1)} min${duty}.`;
  const taken = !/[1-9]/.test(size(hold.loggerErrorKelvin))
    ? ""
    : ` Drawn ${size(hold.loggerErrorKelvin)} ${hold.loggerErrorKelvin > 0 ? "lower" : "higher"} than logged, as the logger’s check found.`;
  return [`${when}: ${set}.${mean}${cycles}${taken}`, ...hold.sentences].join(" ");
}
