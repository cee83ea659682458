import type { ThermostatLoad } from "../../../src/malting/thermostat/thermostatLoad.ts";
import type {
  HoldJudgement,
  KilnThermostat,
  LoggerTrust,
  OffsetPoint,
  StretchAlarm,
  StretchModels,
  ThermostatStretch,
} from "../../../src/report/thermostatResult.ts";

export const DAY = 86_400_000;
/** The evening of 6 January 2025 in Oslo; loads follow every five days. */
const FIRST = Date.UTC(2025, 0, 6, 17);
export const atLoad = (index: number): number => FIRST + index * 5 * DAY;
export const loadName = (index: number): string => `L${index}`;
export const runName = (index: number): string => `25-${String(index + 1).padStart(3, "0")}`;

export const calibration = (afterLoad: number) => ({
  on: Math.floor(atLoad(afterLoad) / DAY) * DAY + 2 * DAY,
  kind: "calibration",
  scope: "thermostat",
  what: "set right against reference",
  alters: null,
});

export interface Asked {
  readonly offsets: readonly number[];
  /** Indices of the loads after which the thermostat was calibrated. */
  readonly calibratedAfter?: readonly number[];
  /** What is said of the latest stretch. */
  readonly models?: StretchModels;
  readonly alarm?: StretchAlarm;
  readonly tooLittle?: string;
}

export function judgementWith({ offsets, calibratedAfter = [], models, alarm, tooLittle }: Asked): HoldJudgement {
  const stretchOf = (index: number): number => calibratedAfter.filter((after) => index > after).length;
  const points = offsets.map(
    (offsetKelvin, i): OffsetPoint => ({
      load: loadName(i),
      runs: [runName(i)],
      at: atLoad(i),
      offsetKelvin,
      standardErrorKelvin: 0.05,
      duty: 0.42,
      swingKelvin: i % 5 === 4 ? null : 3.2 + (i % 3) / 10,
      riseKelvinPerMinute: 1.1 + (i % 4) / 100,
      setCelsius: 48,
      stretch: stretchOf(i),
    }),
  );
  const stretches = [null, ...calibratedAfter].map((after, index): ThermostatStretch => {
    const own = points.filter((point) => point.stretch === index);
    const isLatest = index === calibratedAfter.length;
    return {
      name: after === null ? "since the first load" : "set right against reference",
      event: after === null ? null : calibration(after),
      from: own[0]?.at ?? FIRST,
      to: own.at(-1)?.at ?? FIRST,
      loads: own.length,
      alarm: (isLatest && alarm) || null,
      models: (isLatest && models) || null,
      tooLittle: (isLatest && tooLittle) || null,
    };
  });
  return { hold: "drying", points, without: [], stretches, evidence: [], probes: [] };
}

const interval = (estimate: number, reach: number) => ({ estimate, low: estimate - reach, high: estimate + reach });

/** Level 0.2 up to load `onset`, then −0.05 K a load to load `last`: it leaves −1.5 K at load `onset` + 34. */
export function creepModels(first: number, onset: number, last: number): StretchModels {
  const now = 0.2 - 0.05 * (last - onset);
  return {
    winner: "creep",
    isClear: true,
    scores: [],
    onset: { estimate: atLoad(onset), low: atLoad(onset - 2), high: atLoad(onset + 3) },
    kelvinPerMonth: { estimate: -0.3044, low: -0.36, high: -0.25 },
    stepKelvin: null,
    levelKelvin: interval(0.2, 0.05),
    line: [
      { at: atLoad(first), kelvin: 0.2 },
      { at: atLoad(onset), kelvin: 0.2 },
      { at: atLoad(last), kelvin: now },
    ],
    leaves: {
      kind: "dated",
      side: -1,
      onlyIfCreep: false,
      earliest: atLoad(onset + 30),
      estimate: atLoad(onset + 34),
      latest: atLoad(onset + 40),
      levelNow: interval(now, 0.15),
    },
    theilSenKelvinPerMonth: null,
    mannKendallP: null,
    pettitt: null,
  };
}

export const steadyModels = (first: number, last: number, levelKelvin = 0.1): StretchModels => ({
  ...creepModels(first, first, last),
  winner: "constant",
  onset: null,
  kelvinPerMonth: null,
  levelKelvin: interval(levelKelvin, 0.06),
  line: [first, last].map((load) => ({ at: atLoad(load), kelvin: levelKelvin })),
  leaves: { kind: "not-within-horizon", horizonDays: 365, levelNow: interval(levelKelvin, 0.06) },
});

/** Ten baseline loads at 0.2, then one mean a load; raised at `raised`. */
export function alarmDown(loads: number, from: number, raised: number, means: (load: number) => number): StretchAlarm {
  const after = Array.from({ length: loads - 10 }, (_, i) => i + 10);
  return {
    baselineLoads: 10,
    baselineLevelKelvin: 0.2,
    sigmaKelvin: 0.2,
    weightedMean: { means: Float64Array.from(after, means), reach: Float64Array.from(after, () => 0.25) },
    alarms: [
      {
        fromLoad: loadName(from),
        raisedAtLoad: loadName(raised),
        raisedAt: atLoad(raised),
        direction: "down",
        endedAt: null,
        raisedBy: ["weightedMean", "cumulativeSum"],
      },
    ],
  };
}

export const trust = (parts: Partial<LoggerTrust> = {}): LoggerTrust => ({
  daysSinceCheck: null,
  loggerDays: 100,
  stale: true,
  errorKelvin: null,
  uncertaintyKelvin: null,
  checks: [],
  boilingCelsius: 99.6,
  faults: [],
  ...parts,
});

export const checkOf = (
  at: number,
  referenceCelsius: number,
  readingCelsius: number,
  probe = "air_on",
): LoggerTrust["checks"][number] => ({ at, probe, referenceCelsius, readingCelsius, note: null });

export function kilnWith(judgement: HoldJudgement, parts: Partial<KilnThermostat> = {}): KilnThermostat {
  return {
    kiln: "K1",
    loads: [],
    drying: judgement,
    cure: null,
    fan: [],
    probeAtBulb: true,
    toleranceKelvin: 1.5,
    logger: trust(),
    effects: [],
    events: judgement.stretches.flatMap(({ event }) => event ?? []),
    latestLoad: null,
    tooLittle: null,
    ...parts,
  };
}

/** A load of which only what `parts` says was read. */
export const readLoad = (parts: Partial<ThermostatLoad>): ThermostatLoad =>
  ({
    ...Object.fromEntries(
      ["dryingFrom", "dryingTo", "rampFrom", "cureFrom", "cureTo"].map((name): [string, null] => [name, null]),
    ),
    ...Object.fromEntries(
      ["drying", "cure"].flatMap((hold) =>
        [
          "SetCelsius",
          "OffsetKelvin",
          "MeanCelsius",
          "Cycles",
          "Duty",
          "SwingKelvin",
          "PeriodMinutes",
          "SwitchOffCelsius",
          "SwitchOnCelsius",
          "LoggerErrorKelvin",
        ].map((name): [string, null] => [`${hold}${name}`, null]),
      ),
    ),
    sentences: [],
    ...parts,
  }) as unknown as ThermostatLoad;
