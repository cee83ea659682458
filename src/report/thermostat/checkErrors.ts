import type { LoggerHistory } from "../../malting/thermostat/loggerChecks.ts";
import { loggerErrorAt, sessionUncertainty } from "../../malting/thermostat/loggerCorrection.ts";
import type { OffsetPoint } from "../thermostatResult.ts";

/**
 * What each sitting of checks may itself be off by, as it reaches the loads that it corrects: one column a sitting, K, one
 * standard uncertainty of it. A drift's intervals must hold it, since two checks that err in opposite ways look like a creep between
 * them. Loads that no hot check corrects stand at 0.
 */
export function checkErrors(points: readonly OffsetPoint[], history: LoggerHistory): readonly (readonly number[])[] {
  const weights = points.map(({ at }) => loggerErrorAt(history, at)?.sessions ?? []);
  const used = [...new Set(weights.flatMap((sessions) => sessions.map(({ session }) => session)))];
  return used.map((session) =>
    points.map(({ setCelsius }, index) => {
      const weight = weights[index]?.find((one) => one.session === session)?.weight ?? 0;
      return weight * sessionUncertainty(session, setCelsius);
    }),
  );
}
