import type { KilnThermostat } from "../report/thermostatResult.ts";
import { printDateInFull } from "../units/instant.ts";
import { printNumber } from "../units/print.ts";
import { counted } from "./counted.ts";
import { type HoldVerdict, holdVerdict } from "./holdVerdict.ts";
import { probesAgainst } from "./probeSentences.ts";
import type { Sentence } from "./sentence.ts";
import { degrees, type Reader } from "./thermostatWords.ts";

/** Why the logger, and not the thermostat, may be the one that is off. Moments are milliseconds UTC. */
export type LoggerDoubt =
  | { readonly kind: "stale"; readonly days: number | null; readonly allowed: number }
  /** The last check was an ice point alone, and it was off: nothing corrects the hot readings. */
  | { readonly kind: "icePointOff"; readonly at: number; readonly errorKelvin: number }
  /** Work on the logger fell where the readings stepped. */
  | { readonly kind: "event"; readonly on: number; readonly what: string }
  /** A probe in or over the bed did not move with what was alarmed. */
  | { readonly kind: "probesStill" }
  /** Hot checks either side of the step disagree, as they would if the logger had stepped. */
  | { readonly kind: "checksMoved"; readonly from: number; readonly to: number; readonly movedKelvin: number };

const DAY = 86_400_000;
const ONE_SITTING = DAY / 2;
/** Below this a check was made cold: an ice point or the like. */
const HOT_CELSIUS = 30;
/** A check by hand that is off by more than this found something: twice what such a check is usually good to (common practice). */
const FOUND_KELVIN = 0.3;

interface Sitting {
  readonly at: number;
  readonly hot: boolean;
  readonly errorKelvin: number;
}

/** Checks of the air-on probe, those of one sitting together; where any was hot, the hot ones speak. */
function sittingsOf({ logger }: KilnThermostat): readonly Sitting[] {
  const checks = logger.checks.filter(({ probe }) => probe === "air_on").toSorted((a, b) => a.at - b.at);
  const sittings: (typeof checks)[] = [];
  for (const check of checks) {
    const last = sittings.at(-1);
    if (last?.[0] !== undefined && check.at - last[0].at <= ONE_SITTING) last.push(check);
    else sittings.push([check]);
  }
  return sittings.map((sitting) => {
    const hot = sitting.filter(({ referenceCelsius }) => referenceCelsius >= HOT_CELSIUS);
    const speak = hot.length > 0 ? hot : sitting;
    const errors = speak.map(({ readingCelsius, referenceCelsius }) => readingCelsius - referenceCelsius);
    return {
      at: sitting[0]?.at ?? Number.NaN,
      hot: hot.length > 0,
      errorKelvin: errors.reduce((sum, error) => sum + error, 0) / errors.length,
    };
  });
}

function besideStep(verdict: HoldVerdict, kiln: KilnThermostat, sittings: readonly Sitting[]): readonly LoggerDoubt[] {
  if (verdict.kind !== "step" || verdict.models.onset === null) return [];
  const { low, high } = verdict.models.onset;
  // A date has no clock: a day's grace either side.
  const events = kiln.events.filter(({ scope, on }) => scope === "logger" && on >= low - DAY && on <= high + DAY);
  const hot = sittings.filter((sitting) => sitting.hot);
  const before = hot.filter(({ at }) => at <= low + DAY).at(-1);
  const after = hot.find(({ at }) => at > low + DAY);
  const moved = before === undefined || after === undefined ? 0 : after.errorKelvin - before.errorKelvin;
  const explains = Math.abs(moved) > FOUND_KELVIN && moved * verdict.movedKelvin > 0;
  return [
    ...events.map(({ on, what }): LoggerDoubt => ({ kind: "event", on, what })),
    ...(explains && before !== undefined && after !== undefined
      ? [{ kind: "checksMoved", from: before.at, to: after.at, movedKelvin: moved } as const]
      : []),
  ];
}

/** Every ground for suspecting the logger before the thermostat; empty where its checks are recent and sound. */
export function loggerDoubts(kiln: KilnThermostat): readonly LoggerDoubt[] {
  const { stale, daysSinceCheck, loggerDays } = kiln.logger;
  const sittings = sittingsOf(kiln);
  const last = sittings.at(-1);
  const found: LoggerDoubt[] = stale ? [{ kind: "stale", days: daysSinceCheck, allowed: loggerDays }] : [];
  if (last !== undefined && !last.hot && Math.abs(last.errorKelvin) > FOUND_KELVIN) {
    found.push({ kind: "icePointOff", at: last.at, errorKelvin: last.errorKelvin });
  }
  if (probesAgainst(kiln)) found.push({ kind: "probesStill" });
  const beside = [kiln.drying, kiln.cure].flatMap((hold) => besideStep(holdVerdict(hold), kiln, sittings));
  const seen = new Set<string>();
  return [...found, ...beside.filter((doubt) => !seen.has(JSON.stringify(doubt)) && seen.add(JSON.stringify(doubt)))];
}

/** `The logger may be the one that is off: it was last checked 140 days ago, and 100 are allowed.` */
export function doubtSentence(doubt: LoggerDoubt, { units, timeZone }: Reader): Sentence {
  const off = "The logger may be the one that is off: ";
  switch (doubt.kind) {
    case "stale":
      return doubt.days === null
        ? [`${off}no check of it is logged.`]
        : [
            `${off}it was last checked ${counted(Math.floor(doubt.days), "day")} ago, where the house allows ${printNumber(doubt.allowed, 0)}.`,
          ];
    case "icePointOff":
      return [
        `${off}in ice on ${printDateInFull(doubt.at, timeZone)} it read ${degrees(doubt.errorKelvin, units)} too ${doubt.errorKelvin > 0 ? "high" : "low"}, and it was not checked hot.`,
      ];
    case "event":
      return [
        `${off}the readings stepped about ${printDateInFull(doubt.on, "UTC")}, when work on it was logged (${doubt.what}).`,
      ];
    case "probesStill":
      return [
        `${off}bed and air off did not move with what its probe at air on shows. Hold that probe against a reference first.`,
      ];
    case "checksMoved":
      return [
        `${off}it read ${degrees(doubt.movedKelvin, units)} ${doubt.movedKelvin > 0 ? "higher" : "lower"} when checked on ${printDateInFull(doubt.to, timeZone)} than on ${printDateInFull(doubt.from, timeZone)}, and the readings stepped between the two.`,
      ];
  }
}
