import type { LoggerTrust } from "../../report/thermostatResult.ts";

const DAY = 86_400_000;

/** A stretch of time in which the last check was recent enough, or was too old. */
export interface CheckAge {
  readonly from: number;
  readonly to: number;
  readonly recent: boolean;
}

/** The probe that the thermostat is judged by. */
export const JUDGED_PROBE = "air_on";

/** Checks that count for the thermostat, in time order; those of other probes where air on has none. */
export function countedChecks({ checks }: LoggerTrust): LoggerTrust["checks"] {
  const own = checks.filter(({ probe }) => probe === JUDGED_PROBE);
  return [...(own.length > 0 ? own : checks)].sort((a, b) => a.at - b.at);
}

/** The latest load, from which the age of a check is counted. */
export function asOf(logger: LoggerTrust): number {
  const last = countedChecks(logger).at(-1)?.at ?? 0;
  return last + Math.max(0, logger.daysSinceCheck ?? 0) * DAY;
}

/** From the first check to the latest load, when a check was recent and when the last was too old. */
export function checkAges(logger: LoggerTrust): readonly CheckAge[] {
  const checks = countedChecks(logger);
  const now = asOf(logger);
  const ages: CheckAge[] = [];
  const add = (age: CheckAge): void => {
    const last = ages.at(-1);
    if (age.to <= age.from) return;
    if (last && last.recent === age.recent && last.to === age.from) ages[ages.length - 1] = { ...last, to: age.to };
    else ages.push(age);
  };
  checks.forEach(({ at }, i) => {
    const next = checks[i + 1]?.at ?? now;
    const old = Math.min(at + logger.loggerDays * DAY, next);
    add({ from: at, to: old, recent: true });
    add({ from: old, to: next, recent: false });
  });
  return ages;
}
