import { JSDOM } from "jsdom";
import type { RegressionFit } from "../../src/analysis/regressionFit.ts";
import type { FigureSettings } from "../../src/figures/figureSettings.ts";
import type { AddedVariablePlot, FittedLoad, HumidityDepthModel, Stretch } from "../../src/report/kilnHoursResult.ts";

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
