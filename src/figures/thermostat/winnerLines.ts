import type { HoldJudgement, ThermostatStretch } from "../../report/thermostatResult.ts";
import type { FigureSettings } from "../figureSettings.ts";
import type { Frame } from "../figureSpec.ts";
import type { Label } from "../labelLayer.ts";
import { type DegreeWords, degreeWords } from "./degreeWords.ts";

interface At {
  readonly x: number;
  readonly y: number;
}

/** What explains a stretch best, as it is drawn: the reader's degrees. */
export interface WinnerLine {
  readonly stretch: ThermostatStretch;
  readonly points: readonly At[];
}

export function winnerLines({ stretches }: HoldJudgement, { shown }: DegreeWords): readonly WinnerLine[] {
  return stretches.flatMap((stretch) => {
    const line = stretch.models?.line ?? [];
    return line.length < 2 ? [] : [{ stretch, points: line.map(({ at, kelvin }) => ({ x: at, y: shown(kelvin) })) }];
  });
}

/** The part of a line that lies on the drawing. */
export function onDrawing(points: readonly At[], [low, high]: readonly [number, number]): readonly At[] {
  const cut = (from: At, to: At, at: number): At => ({
    x: at,
    y: from.y + ((to.y - from.y) * (at - from.x)) / (to.x - from.x),
  });
  return points.flatMap((point, i) => {
    const before = points[i - 1];
    const enters = before && before.x < low && point.x > low ? [cut(before, point, low)] : [];
    const leaves = before && before.x < high && point.x > high ? [cut(before, point, high)] : [];
    return [...enters, ...leaves, ...(point.x >= low && point.x <= high ? [point] : [])];
  });
}

/** `−0.55 °C a month` at a creep, `a step of −1.2 °C` at a step: on the latest stretch, on a wide drawing on all. */
export function winnerLabels(lines: readonly WinnerLine[], settings: FigureSettings, frame: Frame): Label[] {
  return (frame.narrow ? lines.slice(-1) : lines).flatMap(({ stretch, points }, place): Label[] => {
    const { models, alarm } = stretch;
    const [from, to] = points.slice(-2);
    if (!models || !from || !to) return [];
    const text = changeWords(stretch, settings);
    if (text === null) return [];
    const up = (models.kelvinPerMonth ?? models.stepKelvin)?.estimate ?? 0;
    const middle = { x: (from.x + to.x) / 2, y: (from.y + to.y) / 2 };
    return [
      {
        ...middle,
        or: [to, from],
        reach: 4,
        // On the other side of the line than what it moves towards, where alarm and forecast stand.
        prefer: up > 0 ? 135 : 225,
        priority: 20 + place,
        farthest: frame.narrow ? 50 : 110,
        role: "ink",
        lines: [{ text, strong: false }, ...((alarm?.alarms.length ?? 0) === 0 ? [{ text: "no alarm" }] : [])],
      },
    ];
  });
}

function changeWords({ models }: ThermostatStretch, settings: FigureSettings): string | null {
  if (models?.kelvinPerMonth) return `${degreeWords(settings, 2).difference(models.kelvinPerMonth.estimate)} a month`;
  if (models?.stepKelvin) return `a step of ${degreeWords(settings).difference(models.stepKelvin.estimate)}`;
  return null;
}
