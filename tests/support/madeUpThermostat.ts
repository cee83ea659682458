import { seededRandom } from "../../src/analysis/seededRandom.ts";
import type { ThermostatLoad } from "../../src/malting/thermostat/thermostatLoad.ts";
import type { EventRow } from "../../src/report/eventRow.ts";
import type { LoadRow } from "../../src/report/loadRow.ts";
import type { KilnCurve } from "../../src/report/runPageResult.ts";
import type {
  DriftEvidence,
  HoldJudgement,
  HoldName,
  KilnThermostat,
  LoggerTrust,
  OffsetPoint,
  StretchModels,
  ThermostatResult,
} from "../../src/report/thermostatResult.ts";
import { bareThermostatLoad } from "./bareThermostatLoad.ts";
import { interval } from "./madeUpChart.ts";

const DAY = 86_400_000;
const MONTH = 30.44 * DAY;
/** A stretch with fewer loads than this is not judged here. */
const FEWEST = 11;
/** Loads at the end of which the made-up change is part. */
const CHANGED = 12;

export type MadeUpChange = "steady" | "creep" | "step";

export const calibration: EventRow = {
  on: Date.UTC(2025, 2, 10),
  kind: "calibration",
  scope: "thermostat",
  what: "kiln thermostat set right against reference",
  alters: null,
};

/** What a step or a creep of this many kelvins looks like to the models; the numbers are made up, not fitted. */
export function madeUpModels(
  kind: MadeUpChange,
  times: { readonly from: number; readonly onset: number; readonly to: number },
  sizeKelvin = -1.1,
): StretchModels {
  const { from, onset, to } = times;
  const level = 0.1;
  const rate = (sizeKelvin / (to - onset)) * MONTH;
  const after = level + sizeKelvin;
  const changed = kind !== "steady";
  return {
    winner: changed ? kind : "constant",
    isClear: true,
    scores: (kind === "step"
      ? ["step", "creep", "constant"]
      : kind === "creep"
        ? ["creep", "step", "constant"]
        : ["constant", "step", "creep"]
    ).map((model, place) => ({
      model: model as "constant" | "step" | "creep",
      parameters: model === "constant" ? 2 : 4,
      residualSquares: 2 + place,
      bic: 20 + 8 * place,
    })),
    onset: changed ? { estimate: onset, low: onset - 12 * DAY, high: onset + 9 * DAY } : null,
    kelvinPerMonth: kind === "creep" ? interval(rate, rate - 0.14, rate + 0.14) : null,
    stepKelvin: kind === "step" ? interval(sizeKelvin, sizeKelvin - 0.3, sizeKelvin + 0.3) : null,
    levelKelvin: interval(level, 0, 0.2),
    line:
      kind === "creep"
        ? [
            { at: from, kelvin: level },
            { at: onset, kelvin: level },
            { at: to, kelvin: after },
          ]
        : kind === "step"
          ? [
              { at: from, kelvin: level },
              { at: onset, kelvin: level },
              { at: onset, kelvin: after },
              { at: to, kelvin: after },
            ]
          : [
              { at: from, kelvin: level },
              { at: to, kelvin: level },
            ],
    leaves:
      kind === "creep"
        ? {
            kind: "dated",
            side: -1,
            onlyIfCreep: false,
            earliest: to + 20 * DAY,
            estimate: to + 33 * DAY,
            latest: to + 74 * DAY,
            levelNow: interval(after, after - 0.3, after + 0.3),
          }
        : {
            kind: "not-within-horizon",
            horizonDays: 365,
            levelNow: kind === "step" ? interval(after, after - 0.3, after + 0.3) : interval(level, 0, 0.2),
          },
    theilSenKelvinPerMonth: kind === "creep" ? interval(rate, rate - 0.2, rate + 0.2) : null,
    mannKendallP: changed ? 0.0004 : 0.4,
    pettitt: { at: onset, p: changed ? 0.001 : 0.6 },
  };
}

/** A piece of evidence with what is given of it, the rest unknown. */
export const evidenceOf = (parts: Pick<DriftEvidence, "kind" | "speaks"> & Partial<DriftEvidence>): DriftEvidence => ({
  change: null,
  before: null,
  beside: null,
  isAtEqualAir: false,
  unknown: null,
  ...parts,
});

function judgement(loads: readonly LoadRow[], hold: HoldName, change: MadeUpChange, startsAt: number): HoldJudgement {
  const { uniform } = seededRandom(hold === "drying" ? 5 : 6);
  const onsetIndex = Math.max(0, loads.length - CHANGED);
  const onset = loads[onsetIndex]?.loadedAt ?? 0;
  const to = loads.at(-1)?.loadedAt ?? 0;
  const stretchOf = (at: number): number => (at >= startsAt ? 1 : 0);
  const points = loads.map((load, index): OffsetPoint => {
    const noise = Array.from({ length: 12 }, () => uniform()).reduce((sum, value) => sum + value, -6) * 0.25;
    const since = Math.max(0, load.loadedAt - onset) / Math.max(1, to - onset);
    const moved = change === "steady" || index < onsetIndex ? 0 : change === "step" ? -1.1 : -1.1 * since;
    return {
      load: load.load,
      runs: load.runs,
      at: load.loadedAt,
      offsetKelvin: 0.1 + noise + moved,
      standardErrorKelvin: 0.12,
      duty: 0.5 + 0.1 * uniform(),
      swingKelvin: 4.2 + 0.4 * uniform(),
      riseKelvinPerMinute: 0.9 + 0.1 * uniform(),
      setCelsius: hold === "drying" ? 58 : 80,
      stretch: stretchOf(load.loadedAt),
    };
  });
  const stretches = [0, 1].flatMap((stretch) => {
    const own = points.filter((point) => point.stretch === stretch);
    const [first, last] = [own[0], own.at(-1)];
    if (first === undefined || last === undefined) return [];
    const isLast = last === points.at(-1);
    const able = own.length >= FEWEST;
    const kind = isLast ? change : "steady";
    const baseline = 10;
    const later = own.slice(baseline);
    let mean = 0;
    const means = Float64Array.from(later, ({ offsetKelvin }) => {
      mean = 0.2 * (offsetKelvin - 0.1) + 0.8 * mean;
      return mean;
    });
    const raised = own.at(-4) ?? last;
    return [
      {
        name: stretch === 0 ? "since the first load" : calibration.what,
        event: stretch === 0 ? null : calibration,
        from: first.at,
        to: last.at,
        loads: own.length,
        alarm: able
          ? {
              baselineLoads: baseline,
              baselineLevelKelvin: 0.1,
              sigmaKelvin: 0.25,
              weightedMean: { means, reach: means.map(() => 0.22) },
              alarms:
                kind === "steady"
                  ? []
                  : [
                      {
                        fromLoad: loads[onsetIndex]?.load ?? first.load,
                        raisedAtLoad: raised.load,
                        raisedAt: raised.at,
                        direction: "down" as const,
                        endedAt: null,
                        raisedBy: ["weightedMean", "cumulativeSum"] as const,
                      },
                    ],
            }
          : null,
        models: able ? madeUpModels(kind, { from: first.at, onset: Math.max(onset, first.at), to: last.at }) : null,
        tooLittle: able ? null : `${own.length} loads with an offset; judging them needs ${FEWEST}.`,
      },
    ];
  });
  return {
    hold,
    points,
    without: loads.length < 2 ? [] : [{ reason: "the heater could not hold the set point", count: 2 }],
    stretches,
    evidence:
      change === "steady" || loads.length < FEWEST
        ? []
        : [
            evidenceOf({ kind: "set point", speaks: "for", change: interval(-1.1, -1.3, -0.9) }),
            evidenceOf({ kind: "worn contacts", speaks: "against", change: interval(0, -0.1, 0.1), before: 4.4 }),
            evidenceOf({
              kind: "weak heater or fan",
              speaks: "against",
              change: interval(0.01, -0.02, 0.04),
              before: 0.95,
            }),
            evidenceOf({ kind: "season", speaks: "open", unknown: "together" }),
          ],
    probes: [],
  };
}

function thermostatLoad(load: LoadRow, drying: OffsetPoint | undefined, cure: OffsetPoint | undefined): ThermostatLoad {
  const { loadedAt } = load;
  const HOUR = 3_600_000;
  return {
    ...bareThermostatLoad,
    load: load.load,
    kiln: load.kiln,
    loadedAt,
    warmUpEndsAt: loadedAt + HOUR,
    dryingFrom: loadedAt + HOUR,
    dryingTo: loadedAt + 9 * HOUR,
    cureFrom: loadedAt + 10 * HOUR,
    cureTo: loadedAt + 13 * HOUR,
    dryingSetCelsius: 58,
    dryingOffsetKelvin: drying?.offsetKelvin ?? null,
    dryingMeanCelsius: drying === undefined ? null : 58 + drying.offsetKelvin,
    dryingSwitchOffCelsius: 60,
    dryingSwitchOnCelsius: 56,
    dryingStandardErrorKelvin: 0.12,
    dryingDuty: drying?.duty ?? null,
    dryingSwingKelvin: drying?.swingKelvin ?? null,
    dryingPeriodMinutes: 14,
    dryingCycles: 33,
    dryingReadingsACycle: 14,
    cureSetCelsius: 80,
    cureOffsetKelvin: cure?.offsetKelvin ?? null,
    cureDuty: cure?.duty ?? null,
    cureSwingKelvin: cure?.swingKelvin ?? null,
    cureOvershootKelvin: 2.2,
    warmUpRiseKelvinPerMinute: drying?.riseKelvinPerMinute ?? null,
    fanShareOfHold: 1,
    readings: 780,
    usualStepMinutes: 1,
    dryingLoggerErrorKelvin: 0.05,
    dryingCheckUncertaintyKelvin: 0.11,
    sentences: ["The logger was silent once, for 12 minutes in all."],
  };
}

const soundLogger = (now: number): LoggerTrust => ({
  daysSinceCheck: 19,
  loggerDays: 100,
  stale: false,
  errorKelvin: -0.1,
  uncertaintyKelvin: 0.11,
  checks: [
    { at: now - 110 * DAY, probe: "air_on", referenceCelsius: 0, readingCelsius: 0, note: "ice point" },
    {
      at: now - 110 * DAY + 1_800_000,
      probe: "air_on",
      referenceCelsius: 50,
      readingCelsius: 50.1,
      note: "water bath",
    },
    { at: now - 19 * DAY, probe: "air_on", referenceCelsius: 0, readingCelsius: 0, note: "ice point" },
    { at: now - 19 * DAY + 1_800_000, probe: "air_on", referenceCelsius: 50, readingCelsius: 49.9, note: "water bath" },
  ],
  boilingCelsius: 99.6,
  faults: [],
});

/** One kiln's thermostats on these loads: drying as asked, the cure steady. For tests of pages and sentences alone. */
export function madeUpKiln(
  loads: readonly LoadRow[],
  change: MadeUpChange = "creep",
  changes: Partial<KilnThermostat> = {},
): KilnThermostat {
  const drying = judgement(loads, "drying", change, calibration.on);
  const cure = judgement(loads, "cure", "steady", calibration.on);
  const ofDrying = new Map(drying.points.map((point) => [point.load, point]));
  const ofCure = new Map(cure.points.map((point) => [point.load, point]));
  const changed = change !== "steady" && loads.length >= FEWEST;
  return {
    kiln: "K1",
    loads: loads.map((load) => thermostatLoad(load, ofDrying.get(load.load), ofCure.get(load.load))),
    drying,
    cure,
    fan: loads.slice(0, 6).map(({ load, runs, loadedAt }, i) => ({
      load,
      runs,
      at: loadedAt,
      setCelsius: 45,
      offsetKelvin: i === 2 ? null : 0.6 + 0.1 * i,
      shareOfHold: 0.7 + 0.02 * i,
    })),
    probeAtBulb: true,
    toleranceKelvin: 1.5,
    logger: soundLogger(loads.at(-1)?.loadedAt ?? 0),
    effects: changed
      ? [
          {
            measure: "kiln hours",
            effect: interval(0.4, -0.1, 0.9),
            loads: 12,
          },
          {
            measure: "final moisture",
            effect: null,
            loads: 12,
          },
        ]
      : [],
    events: [calibration],
    latestLoad: loads.at(-1)?.load ?? null,
    tooLittle: loads.length === 0 ? "No load of this kiln has readings yet." : null,
    ...changes,
  };
}

export const madeUpThermostat = (loads: readonly LoadRow[], change: MadeUpChange = "creep"): ThermostatResult => ({
  kilns: loads.length === 0 ? [] : [madeUpKiln(loads, change)],
});

/** One reading a minute: warm-up, a hold that cycles in 14 minutes about `setCelsius`, then the cure about 80 °C. */
export function madeUpCurve({ loadedAt }: LoadRow): KilnCurve {
  const MINUTE = 60_000;
  const at = Float64Array.from({ length: 780 }, (_, i) => loadedAt + i * MINUTE);
  const airOnCelsius = at.map((_, i) => {
    if (i < 60) return 20 + (38 * i) / 60;
    if (i >= 540 && i < 600) return 58 + (22 * (i - 540)) / 60;
    return (i < 540 ? 58 : 80) + 2.1 * Math.sin((2 * Math.PI * i) / 14);
  });
  return {
    at,
    airOnCelsius,
    airOffCelsius: airOnCelsius.map((celsius) => 0.7 * celsius),
    bedCelsius: airOnCelsius.map((celsius) => 0.8 * celsius),
  };
}
