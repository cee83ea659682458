import { JSDOM } from "jsdom";
import type { RegressionFit } from "../../src/analysis/regressionFit.ts";
import type { FigureSettings } from "../../src/figures/figureSettings.ts";
import type { AddedVariablePlot, FittedLoad, HumidityDepthModel, Stretch } from "../../src/report/kilnHoursResult.ts";
import type { LoadRow } from "../../src/report/loadRow.ts";
import type { KilnCurve } from "../../src/report/runPageResult.ts";
import type { RunRow } from "../../src/report/runRow.ts";

export const document: Document = new JSDOM("").window.document;

export const settings: FigureSettings = {
  units: "metric",
  timeZone: "Europe/Oslo",
  runHref: (run) => `../runs/${encodeURIComponent(run)}/`,
};

const none = new Float64Array();

/** A fit of which figures read only the spread and R². */
export const fitOf = (residualStandardDeviation: number, rSquared: number): RegressionFit => ({
  terms: [],
  observations: 0,
  degreesOfFreedom: 0,
  residualStandardDeviation,
  rSquared,
  adjustedRSquared: rSquared,
  f: 0,
  fDegreesOfFreedom: [0, 0],
  fPValue: 1,
  leaveOneOutRootMeanSquare: 0,
  fitted: none,
  residuals: none,
  leverage: none,
  studentisedResiduals: none,
  cooksDistance: none,
  lagOneAutocorrelation: { estimate: 0, low: 0, high: 0 },
  durbinWatson: 2,
  breuschPagan: { statistic: 0, degreesOfFreedom: 1, p: 1 },
  covariance: none,
  inverseFactor: none,
});

const DAY = 86_400_000;
export const firstLoading: number = Date.UTC(2025, 0, 6, 17);

/** One load every five days whose residuals are those given; hours rise 0.08 h with each point of humidity. */
export function loadsWith(residuals: readonly number[]): FittedLoad[] {
  return residuals.map((residualHours, i) => {
    const relativeHumidityPercent = 60 + ((i * 7) % 25);
    const fittedHours = 12.5 + 0.08 * (relativeHumidityPercent - 60);
    return {
      load: `L${i}`,
      runs: [`25-${String(i + 1).padStart(3, "0")}`],
      variety: null,
      kiln: "1",
      loadedAt: firstLoading + i * 5 * DAY,
      hours: fittedHours + residualHours,
      relativeHumidityPercent,
      celsius: null,
      bedDepthMetres: 0.15 + (i % 3) / 100,
      fittedHours,
      residualHours,
      leverage: 0,
      cooksDistance: 0,
      studentisedResidual: 0,
      oneStepAhead: null,
    };
  });
}

function plotOf(predictor: AddedVariablePlot["predictor"], loads: readonly FittedLoad[]): AddedVariablePlot {
  const x = Float64Array.from(loads.map((l) => l[predictor]));
  const low = Math.min(...x);
  const high = Math.max(...x) + 1e-9;
  const line = Array.from({ length: 11 }, (_, i) => {
    const at = low + ((high - low) * i) / 10;
    return { x: at, y: 13 + i / 10, low: 12.8 + i / 10, high: 13.2 + i / 10 };
  });
  return { predictor, x, y: Float64Array.from(loads.map((l) => l.hours)), line, otherHeldAt: 0.16 };
}

export function modelWith(residuals: readonly number[], residualStandardDeviation = 0.5): HumidityDepthModel {
  const loads = loadsWith(residuals);
  return {
    kind: "humidity-and-depth",
    fit: fitOf(residualStandardDeviation, 0.83),
    loads,
    hoursPerTenPoints: { estimate: 0.74, low: 0.6, high: 0.88 },
    hoursPerCentimetre: { estimate: 0.5, low: 0.4, high: 0.6 },
    addedVariable: [plotOf("relativeHumidityPercent", loads), plotOf("bedDepthMetres", loads)],
    meanRelativeHumidityPercent: 70,
    meanBedDepthMetres: 0.16,
  };
}

/** The loads `from` to `to` of {@link loadsWith} as one stretch. */
export function stretchOf(model: HumidityDepthModel, from: number, to: number, meanResidualHours: number): Stretch {
  const held = model.loads.slice(from, to + 1);
  return {
    loads: held.map((l) => l.load),
    from: held[0]?.loadedAt ?? 0,
    to: held.at(-1)?.loadedAt ?? 0,
    meanResidualHours,
  };
}

/** Text of a drawing's elements that match `selector`. */
export function textsOf(svg: string, selector: string): string[] {
  const holder = document.createElement("div");
  holder.innerHTML = svg;
  return [...holder.querySelectorAll(selector)].map((element) => element.textContent ?? "");
}

const HOUR = 3_600_000;

/** A load of 15 h from 17:00 on 30 October 2026 (Oslo), the cure begun after ten. */
export const kilnLoad: LoadRow = {
  load: "1-26-117",
  kiln: "1",
  runs: ["26-117"],
  variety: null,
  grain: null,
  loadedAt: Date.UTC(2026, 9, 30, 16),
  cureStartedAt: Date.UTC(2026, 9, 31, 2),
  heatOffAt: Date.UTC(2026, 9, 31, 6),
  unloadedAt: Date.UTC(2026, 9, 31, 7),
  kilnHours: 15,
  dryingHours: 10,
  bedDepthMetres: 0.15,
  grainInKilograms: null,
  grainMoisturePercent: null,
  greenLoadKilograms: null,
  greenMoisturePercent: null,
  airAtLoading: null,
  airOverLoad: null,
  dryingSetCelsius: 48,
  cureSetCelsius: 80,
  finalMoisturePercent: null,
  maltOutKilograms: null,
  waterRemovedKilograms: null,
  energyKilowattHours: null,
  powerLimitedShare: null,
  fanShareOfHold: null,
  powerLimited: false,
  readingsFile: null,
};

/** Readings every minute: air on cycles ±2 °C about its set point every 12 minutes; air off has a silence of 30 minutes. */
export function thermostatCurve(): KilnCurve {
  const minutes = Array.from({ length: 901 }, (_, i) => i);
  const set = (i: number): number => (i < 600 ? 48 : Math.min(80, 48 + (i - 600) / 3));
  const wave = (i: number): number => (Math.abs((i % 12) - 6) - 3) / 1.5;
  // Loggers read to a tenth of a degree and tremble by as much.
  const tremble = (i: number, seed: number): number => Math.round(((i * seed) % 7) / 3 - 1) / 10;
  const tenth = (value: number): number => Math.round(value * 10) / 10;
  return {
    at: Float64Array.from(minutes, (i) => kilnLoad.loadedAt + i * 60_000),
    airOnCelsius: Float64Array.from(minutes, (i) => tenth(set(i) + wave(i))),
    airOffCelsius: Float64Array.from(minutes, (i) =>
      i >= 300 && i < 330 ? Number.NaN : tenth(24 + 50 / (1 + Math.exp((600 - i) / 60)) + tremble(i, 13)),
    ),
    bedCelsius: Float64Array.from(minutes, (i) => tenth(26 + 52 / (1 + Math.exp((560 - i) / 70)) + tremble(i, 17))),
  };
}

const nothing = null;
/** A run of which only the times are recorded: steep from 08:00 on 25 October 2026 (Oslo). */
export const timedRun: RunRow = {
  ...(Object.fromEntries(
    ["lot", "lots", "grain", "variety", "grower", "notes", "bagCode"].map((name) => [name, nothing]),
  ) as unknown as RunRow),
  run: "26-117",
  loads: 1,
  steepStartedAt: Date.UTC(2026, 9, 25, 7),
  steepEndedAt: Date.UTC(2026, 9, 25, 7) + 38 * HOUR,
  germinationStartedAt: Date.UTC(2026, 9, 25, 7) + 38.5 * HOUR,
  germinationEndedAt: Date.UTC(2026, 9, 30, 15),
  loadedAt: kilnLoad.loadedAt,
  cureStartedAt: kilnLoad.cureStartedAt,
  unloadedAt: kilnLoad.unloadedAt,
  dryingHours: 10,
};
