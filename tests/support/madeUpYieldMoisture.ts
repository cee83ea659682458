import { seededRandom } from "../../src/analysis/seededRandom.ts";
import type {
  ChartedMeasure,
  ChartedRun,
  ChartPhase,
  ControlChart,
  YieldMoistureResult,
} from "../../src/report/controlChartResult.ts";
import type { LoadRow } from "../../src/report/loadRow.ts";
import { interval, madeUpBalance, madeUpCapability, madeUpCost } from "./madeUpChart.ts";

const VARIETIES = ["Amber", "Brindle"] as const;
/** Batches that make a baseline here, both varieties together; later ones of the made-up house are judged by them. */
const BASELINE = 16;

interface MadeUpMeasure {
  readonly measure: ChartedMeasure;
  readonly centres: readonly [number, number];
  readonly sigma: number;
  /** What the last eight batches are off by. */
  readonly shift: number;
}

const YIELD: MadeUpMeasure = { measure: "dry_yield_pct", centres: [90.6, 91.5], sigma: 0.6, shift: 0 };
const MOISTURE: MadeUpMeasure = { measure: "final_moisture_pct", centres: [4.4, 4.6], sigma: 0.18, shift: 0.34 };

function chartedRuns(loads: readonly LoadRow[], { centres, sigma, shift }: MadeUpMeasure): readonly ChartedRun[] {
  const { uniform } = seededRandom(11);
  return loads.map((load, index): ChartedRun => {
    // Twelve uniforms less six: near enough to normal for a page to look at.
    const wobble = Array.from({ length: 12 }, () => uniform()).reduce((sum, value) => sum + value, -6);
    const centre = centres[index % 2] ?? centres[0];
    const deviation = sigma * wobble + (index >= loads.length - 8 ? shift : 0) - (index === 20 ? 5 * sigma : 0);
    return {
      run: load.runs[0] ?? load.load,
      variety: VARIETIES[index % 2] ?? VARIETIES[0],
      lot: "L4",
      kiln: load.kiln,
      load: load.load,
      at: load.unloadedAt ?? load.loadedAt,
      value: centre + deviation,
      samples: 3,
      phase: 0,
      inBaseline: index < BASELINE && index !== 3,
      leftOut: index === 3 ? "water off for an hour in the second wet stand (3 Feb 2025)" : null,
      centre,
      deviation,
      sigma,
    };
  });
}

function phaseOf(runs: readonly ChartedRun[], { centres, sigma }: MadeUpMeasure): ChartPhase {
  const baselineRuns = runs.filter(({ inBaseline }) => inBaseline).length;
  return {
    name: "since the first batch",
    from: runs[0]?.at ?? 0,
    to: runs.at(-1)?.at ?? 0,
    runs: runs.length,
    baselineRuns,
    provisional: baselineRuns < 12,
    sigma: interval(sigma, 0.75 * sigma, 1.5 * sigma),
    pooled: true,
    centres: VARIETIES.map((variety, i) => ({
      variety,
      centre: interval(centres[i] ?? 0, (centres[i] ?? 0) - 0.4 * sigma, (centres[i] ?? 0) + 0.4 * sigma),
      sigma: interval(sigma, 0.75 * sigma, 1.5 * sigma),
      reach: 3 * sigma,
      baselineRuns: Math.round(baselineRuns / 2),
      frozen: runs.length > BASELINE,
    })),
    reach: interval(3 * sigma, 2.25 * sigma, 4.5 * sigma),
  };
}

function signalsOf(runs: readonly ChartedRun[], { shift, sigma }: MadeUpMeasure): ControlChart["signals"] {
  const far = runs[20];
  const late = runs.slice(-8);
  const [first, last] = [late[0], late.at(-1)];
  const found: ControlChart["signals"][number][] = [];
  if (far !== undefined) {
    found.push({
      rule: "beyondLimits",
      direction: "below",
      size: -5 * sigma,
      runs: [far.run],
      raisedAt: far.run,
      from: far.at,
      to: far.at,
      beside: ["20 Apr 2025: scale found mis-set, set right with test weights", "Amber from lot L4, before it L3"],
    });
  }
  if (shift !== 0 && runs.length > 30 && first !== undefined && last !== undefined) {
    found.push({
      rule: "weightedMean",
      direction: "above",
      size: shift,
      runs: late.map(({ run }) => run),
      raisedAt: late[4]?.run ?? last.run,
      from: first.at,
      to: last.at,
      beside: [],
    });
  }
  return found;
}

/** Weighted means and cumulative sums by their recursions (e-Handbook 6.3.2.3 and 6.3.2.4). */
function running(runs: readonly ChartedRun[], sigma: number) {
  let [mean, up, down, share] = [0, 0, 0, 0];
  const rows = runs.map(({ deviation }) => {
    const off = deviation ?? 0;
    mean = 0.1 * off + 0.9 * mean;
    share = 0.01 + 0.81 * share;
    up = Math.max(0, up + off / sigma - 0.5);
    down = Math.max(0, down - off / sigma - 0.5);
    return { mean, up, down, reach: 2.814 * sigma * Math.sqrt(share) };
  });
  return {
    weightedMean: {
      means: Float64Array.from(rows, (row) => row.mean),
      reach: Float64Array.from(rows, (row) => row.reach),
      weight: 0.1,
    },
    cumulativeSums: {
      upper: Float64Array.from(rows, (row) => row.up),
      lower: Float64Array.from(rows, (row) => row.down),
      decision: 4.77,
    },
  };
}

function withinOf(runs: readonly ChartedRun[]): ControlChart["within"] {
  const points = runs.map((_, i) => ({
    count: 3,
    standardDeviation: i % 17 === 9 ? 0.52 : 0.1 + 0.02 * (i % 9),
    centre: 0.18,
    low: 0,
    high: 0.46,
    falseSignalChance: 0.006,
    chance: 0.006,
  }));
  const unevenRuns = runs.filter((_, i) => (points[i]?.standardDeviation ?? 0) > 0.46).map(({ run }) => run);
  return { sigma: 0.2, baselineRuns: Math.min(runs.length, BASELINE), points, unevenRuns, narrowerBy: 1.6 };
}

function chartOf(loads: readonly LoadRow[], made: MadeUpMeasure): ControlChart {
  const runs = chartedRuns(loads, made);
  const able = runs.length >= 5;
  const perRun = 190;
  return {
    measure: made.measure,
    runs: able ? runs : runs.map((run) => ({ ...run, centre: null, deviation: null, sigma: null })),
    lacking: [{ reason: "not off the kiln yet", count: 1 }],
    phases: able ? [phaseOf(runs, made)] : [],
    rules: ["beyondLimits", "weightedMean"],
    signals: able ? signalsOf(runs, made) : [],
    falseSignals: able
      ? {
          rules: ["beyondLimits", "weightedMean"],
          knownLimits: perRun,
          low: 60,
          high: 900,
          expected: interval(runs.length / perRun, runs.length / 900, runs.length / 60),
        }
      : null,
    weightedMean: null,
    cumulativeSums: null,
    ...(able ? running(runs, made.sigma) : {}),
    movingRanges: able
      ? {
          ranges: runs.map(({ value }, i) => (i < 2 ? null : Math.abs(value - (runs[i - 2]?.value ?? value)))),
          centre: 1.128 * made.sigma,
          high: 3.267 * 1.128 * made.sigma,
        }
      : null,
    within: able && made === MOISTURE ? withinOf(runs) : null,
    assumptions: able
      ? {
          lagOne: interval(0.08, -0.18, 0.33),
          onResiduals: false,
          skewness: runs.length < 8 ? null : { skewness: -0.4, z: -1.3, p: 0.19 },
          normalPlot: [...runs]
            .map(({ deviation }) => (deviation ?? 0) / made.sigma)
            .sort((a, b) => a - b)
            .map((seen, i, all) => ({ expected: 4 * ((i + 0.5) / all.length) - 2, seen })),
          coarseStep: null,
          distinctValues: runs.length,
        }
      : null,
    capability: able
      ? VARIETIES.map((variety) =>
          made === MOISTURE
            ? madeUpCapability({ variety, runs: Math.ceil(runs.length / 2) })
            : madeUpCapability({
                variety,
                runs: Math.ceil(runs.length / 2),
                low: 89.5,
                target: 91,
                high: null,
                seenOutside: 0,
              }),
        )
      : [],
    tooLittle: able
      ? null
      : `${runs.length} of these batches have it; limits need at least five that are not all the same.`,
  };
}

/** What a report says of yield and moisture, one batch a load: two varieties, a far batch and a late shift of moisture. */
export function madeUpYieldMoisture(loads: readonly LoadRow[]): YieldMoistureResult {
  if (loads.length === 0) return { charts: [], moistureCost: null, balance: [] };
  return {
    charts: [chartOf(loads, YIELD), chartOf(loads, MOISTURE)],
    moistureCost: loads.length < 12 ? null : madeUpCost({ batches: loads.length }),
    balance: [
      madeUpBalance({ batches: Math.ceil(loads.length / 2) }),
      madeUpBalance({
        variety: "Brindle",
        batches: Math.floor(loads.length / 2),
        negative: 1,
        steepAndRespirationPercent: -0.4,
      }),
    ],
  };
}
