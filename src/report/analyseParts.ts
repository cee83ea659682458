import type { FactReport } from "../findings/facts/factFrame.ts";
import { pressureAtAltitude } from "../malting/moistAir.ts";
import { compareAir } from "./airCompared.ts";
import type { AnalysisGround } from "./analysisGround.ts";
import { analyseChanges } from "./changes/analyseChanges.ts";
import { analyseKilnHours } from "./kilnHours/analyseKilnHours.ts";
import { stretchesOf } from "./kilnHours/stretches.ts";
import { withStretches } from "./kilnHours/withStretches.ts";
import { once } from "./once.ts";
import type { PartName, ReportParts } from "./report.ts";
import { analyseReview } from "./review/analyseReview.ts";
import { groundBefore } from "./review/groundBefore.ts";
import { analyseSteepGermination } from "./steepGermination/analyseSteepGermination.ts";
import { targetMoisture } from "./targetMoisture.ts";
import { analyseThermostat } from "./thermostat/analyseThermostat.ts";
import { analyseVarieties } from "./varieties/analyseVarieties.ts";
import { withIntervals } from "./varieties/followUp.ts";
import { analyseYieldMoisture } from "./yieldMoisture/analyseYieldMoisture.ts";

/** Each part worked out when it is asked for, and once. */
export type AnalysedParts = { readonly [Part in PartName]: () => Promise<ReportParts[Part]> };

/**
 * What is worked out of a view's rows. Kiln hours come without their stretches (`stretchesOf` finds them), which take
 * as long as all the rest of them.
 */
export function analyseParts(ground: AnalysisGround): AnalysedParts {
  const parts = analyseOwnParts(ground);
  const review = once(async () =>
    analyseReview(ground.rows, {
      costs: ground.published.costs,
      months: ground.everyMonth === true ? "all" : ground.view.month,
      trade: ground.logged.trade,
      targets: ground.logged.targets,
      comparing: comparingOf(ground),
      reportBefore: (before) => reportBefore(groundBefore(ground, before)),
    }),
  );
  return { ...parts, review };
}

/** How runs before and after something are compared. */
function comparingOf({ logged, view, rows }: AnalysisGround) {
  return {
    samples: logged.samples,
    without: new Set(view.without),
    targetMoisturePercent: targetMoisture(logged.targets),
    pressurePascals: pressureAtAltitude(rows.house.altitudeMetres),
  };
}

/** What a month's facts are drawn from, as one object. */
async function reportBefore(ground: AnalysisGround): Promise<FactReport> {
  const parts = analyseOwnParts(ground);
  const hours = await parts.kilnHours();
  return {
    ...ground.rows,
    kilnHours: withStretches(hours, stretchesOf(hours.kilnHours)),
    yieldMoisture: await parts.yieldMoisture(),
    thermostat: await parts.thermostat(),
    varieties: withIntervals(await parts.varieties()),
    steepGermination: await parts.steepGermination(),
  };
}

/** The parts that stand on rows alone. */
function analyseOwnParts(ground: AnalysisGround): Omit<AnalysedParts, "review"> {
  const { logged, published, view, rows, forFacts = false } = ground;
  const { runs, loads, events, house } = rows;
  const { timeZone, altitudeMetres } = house;
  const { targets, samples } = logged;
  const without = new Set(view.without);
  const kilnHours = once(async () => {
    const result = analyseKilnHours(loads, {
      air: view.air,
      without,
      targetMoisturePercent: targetMoisture(targets),
      pressurePascals: pressureAtAltitude(altitudeMetres),
      timeZone,
    });
    return { ...result, airCompared: compareAir(await logged.airs(), loads, result.airBasis) };
  });
  const yieldMoisture = once(async () =>
    analyseYieldMoisture(runs, loads, {
      samples,
      targets,
      events,
      baselines: published.baselines,
      rules: view.rules,
      without,
      timeZone,
    }),
  );
  const thermostat = once(async () => {
    const shown = new Set(loads.map(({ load }) => load));
    const read = await logged.thermostat();
    const charts = (await yieldMoisture()).charts;
    return analyseThermostat(
      read.loads.filter(({ load }) => shown.has(load)),
      {
        settings: published.thermostat,
        latestStretchOnly: forFacts,
        checks: read.checks,
        events,
        loads,
        kilnHours: await kilnHours(),
        moisture: charts.find(({ measure }) => measure === "final_moisture_pct"),
        altitudeMetres,
        timeZone,
      },
    );
  });
  const varieties = once(async () => {
    const offsets = (await logged.thermostat()).loads.flatMap(({ load, dryingOffsetKelvin: offset }) =>
      offset === null ? [] : [[load, offset] as const],
    );
    return analyseVarieties(runs, {
      ...(await logged.varieties()),
      targets,
      halfWidths: published.tolerances,
      samples,
      kilnHours: await kilnHours(),
      loads,
      events,
      offsets: new Map(offsets),
      lotsOnly: forFacts,
      without,
      timeZone,
    });
  });
  const steepGermination = once(async () =>
    analyseSteepGermination(runs, { floor: await logged.floor(), targets, without }),
  );
  const changes = once(async () =>
    analyseChanges(runs, loads, {
      ...comparingOf(ground),
      events,
      targets,
      kilnHours: await kilnHours(),
      timeZone,
    }),
  );
  return { kilnHours, yieldMoisture, thermostat, varieties, steepGermination, changes };
}
