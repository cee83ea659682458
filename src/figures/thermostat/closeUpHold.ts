import type { ThermostatLoad } from "../../malting/thermostat/thermostatLoad.ts";
import type { HoldName } from "../../report/thermostatResult.ts";

const MINUTE = 60_000;
/** Drawn where nothing else is asked for: so many cycles, or the last hour where their length is not known. */
const CYCLES = 6;
const LAST_HOUR = 60 * MINUTE;
/** However slowly a kiln cycles, no more than this. */
const LONGEST = 6 * LAST_HOUR;

/** What was read from one hold of one load, and the span to draw. */
export interface CloseUpHold {
  readonly hold: HoldName;
  readonly from: number;
  readonly to: number;
  readonly setCelsius: number | null;
  readonly meanCelsius: number | null;
  readonly offsetKelvin: number | null;
  readonly switchOnCelsius: number | null;
  readonly switchOffCelsius: number | null;
  readonly swingKelvin: number | null;
  readonly periodMinutes: number | null;
  readonly duty: number | null;
  /** Taken off the readings, K; 0 where no check allows it. */
  readonly loggerErrorKelvin: number;
  /** Why something of it is not claimed. */
  readonly sentences: readonly string[];
}

/**
 * The hold that a span lies in; without a span the last cycles of the drying hold, else of the cure.
 *
 * @returns null where no hold was found and no span is given
 */
export function closeUpHold(
  load: ThermostatLoad,
  { from, to }: { readonly from?: number | undefined; readonly to?: number | undefined },
): CloseUpHold | null {
  const end = to ?? (from === undefined ? (load.dryingTo ?? load.cureTo) : from + LAST_HOUR);
  if (end === null) return null;
  const cureBegins = load.rampFrom ?? load.cureFrom ?? Number.POSITIVE_INFINITY;
  const middle = from === undefined ? end - 1 : (from + end) / 2;
  const own = middle < cureBegins ? dryingOf(load) : cureOf(load);
  const cycle = own.periodMinutes === null ? own.meanCycle : own.periodMinutes * MINUTE;
  const usual = cycle === null ? LAST_HOUR : Math.min(CYCLES * cycle, LONGEST);
  const start = from ?? Math.max(end - usual, own.begins ?? Number.NEGATIVE_INFINITY);
  const lead = own.hold === "drying" ? "Drying: " : "Cure: ";
  const { begins: _begins, meanCycle: _meanCycle, ...read } = own;
  return {
    ...read,
    from: start,
    to: end,
    sentences: load.sentences.filter((said) => said.startsWith(lead)).map((said) => said.slice(lead.length)),
  };
}

const dryingOf = (load: ThermostatLoad) => ({
  hold: "drying" as const,
  begins: load.dryingFrom,
  meanCycle: meanCycle(load.dryingFrom, load.dryingTo, load.dryingCycles),
  setCelsius: load.dryingSetCelsius,
  meanCelsius: load.dryingMeanCelsius,
  offsetKelvin: load.dryingOffsetKelvin,
  switchOnCelsius: load.dryingSwitchOnCelsius,
  switchOffCelsius: load.dryingSwitchOffCelsius,
  swingKelvin: load.dryingSwingKelvin,
  periodMinutes: load.dryingPeriodMinutes,
  duty: load.dryingDuty,
  loggerErrorKelvin: load.dryingLoggerErrorKelvin ?? 0,
});

const cureOf = (load: ThermostatLoad) => ({
  hold: "cure" as const,
  begins: load.cureFrom,
  meanCycle: meanCycle(load.cureFrom, load.cureTo, load.cureCycles),
  setCelsius: load.cureSetCelsius,
  meanCelsius: load.cureMeanCelsius,
  offsetKelvin: load.cureOffsetKelvin,
  switchOnCelsius: load.cureSwitchOnCelsius,
  switchOffCelsius: load.cureSwitchOffCelsius,
  swingKelvin: load.cureSwingKelvin,
  periodMinutes: load.curePeriodMinutes,
  duty: load.cureDuty,
  loggerErrorKelvin: load.cureLoggerErrorKelvin ?? 0,
});

/** About how long a cycle takes where its period is not claimed: only to choose how much to draw. */
function meanCycle(from: number | null, to: number | null, cycles: number | null): number | null {
  return from === null || to === null || cycles === null || cycles === 0 ? null : (to - from) / cycles;
}
