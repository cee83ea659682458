import type { Interval } from "../../analysis/regressionFit.ts";
import type { HoldJudgement, KilnThermostat, OffsetPoint, ThermostatStretch } from "../../report/thermostatResult.ts";

const moved = ({ estimate, low, high }: Interval, by: number): Interval => ({
  estimate: estimate - by,
  low: low - by,
  high: high - by,
});

/** What the changes of a stretch are counted from, K: its level before any change, else the mean of its loads. */
export function changesFrom({ models, alarm }: ThermostatStretch, own: readonly OffsetPoint[]): number {
  const known = models?.levelKelvin.estimate ?? alarm?.baselineLevelKelvin;
  if (known !== undefined) return known;
  return own.length === 0 ? 0 : own.reduce((sum, { offsetKelvin }) => sum + offsetKelvin, 0) / own.length;
}

/**
 * What may be drawn of a hold: offsets where the probe sits at the bulb, and where it does not how far each load lies from the level
 * of its own stretch before any change, since there the offsets themselves say where the probe is and not what the thermostat does.
 */
export function shownOffsets(judgement: HoldJudgement, { probeAtBulb }: KilnThermostat): HoldJudgement {
  if (probeAtBulb) return judgement;
  const from = judgement.stretches.map((stretch, index) =>
    changesFrom(
      stretch,
      judgement.points.filter((point) => point.stretch === index),
    ),
  );
  return {
    ...judgement,
    points: judgement.points.map((point) => ({
      ...point,
      offsetKelvin: point.offsetKelvin - (from[point.stretch] ?? 0),
    })),
    stretches: judgement.stretches.map((stretch, index) => changed(stretch, from[index] ?? 0)),
  };
}

function changed(stretch: ThermostatStretch, by: number): ThermostatStretch {
  const { alarm, models } = stretch;
  return {
    ...stretch,
    alarm: alarm && { ...alarm, baselineLevelKelvin: alarm.baselineLevelKelvin - by },
    models: models && {
      ...models,
      levelKelvin: moved(models.levelKelvin, by),
      line: models.line.map(({ at, kelvin }) => ({ at, kelvin: kelvin - by })),
    },
  };
}
