import type { LoggerTrust } from "../report/thermostatResult.ts";
import { printDate } from "../units/instant.ts";
import { print } from "../units/print.ts";
import { degrees, type Reader } from "./thermostatWords.ts";

/**
 * `On 9 Oct 2025 the logger read 1.4 °C too high at about 80 °C.` A sentence for each check that found the logger's own
 * fault; two sittings of one day that found the same are said once.
 */
export function faultSentences({ faults }: LoggerTrust, { units, timeZone }: Reader): readonly string[] {
  const said = faults.map(({ at, errorKelvin, aboutCelsius }) => {
    const off = `${degrees(errorKelvin, units)} too ${errorKelvin > 0 ? "high" : "low"}`;
    const about = print(aboutCelsius, "temperature", units, { decimals: 0 });
    return `On ${printDate(at, timeZone)} the logger read ${off} at about ${about}.`;
  });
  return [...new Set(said)];
}
