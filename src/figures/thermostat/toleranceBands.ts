import type { RenderFunction } from "@observablehq/plot";
import type { KilnThermostat, ThermostatStretch } from "../../report/thermostatResult.ts";
import { layer } from "../layer.ts";
import type { DegreeWords } from "./degreeWords.ts";
import type { StretchSpan } from "./stretchSpans.ts";

/** The tolerance over one stretch of time, in the reader's degrees. */
export interface ToleranceBand {
  readonly from: number;
  readonly to: number;
  readonly middle: number;
  readonly reach: number;
}

/**
 * What the tolerance is counted from, in kelvins: the set point where the probe sits at the bulb, else the level before
 * the change. Null where that level is not known.
 */
export function toleranceMiddle({ probeAtBulb }: KilnThermostat, stretch: ThermostatStretch): number | null {
  if (probeAtBulb) return 0;
  return stretch.models?.levelKelvin.estimate ?? stretch.alarm?.baselineLevelKelvin ?? null;
}

export function toleranceBands(
  kiln: KilnThermostat,
  spans: readonly StretchSpan[],
  { shown }: DegreeWords,
): readonly ToleranceBand[] {
  const reach = shown(kiln.toleranceKelvin);
  const [first, last] = [spans[0], spans.at(-1)];
  if (kiln.probeAtBulb && first && last) return [{ from: first.from, to: last.to, middle: 0, reach }];
  return spans.flatMap(({ stretch, from, to }) => {
    const middle = toleranceMiddle(kiln, stretch);
    return middle === null ? [] : [{ from, to, middle: shown(middle), reach }];
  });
}

/** The wash of each band, its edges, and what it is counted from. */
export function toleranceMarks(bands: readonly ToleranceBand[]): readonly RenderFunction[] {
  return [
    layer("band", ({ x, y, pen }) =>
      bands.map(({ from, to, middle, reach }) =>
        pen.element("rect", {
          x: x(from),
          y: y(middle + reach),
          width: x(to) - x(from),
          height: y(middle - reach) - y(middle + reach),
        }),
      ),
    ),
    layer("limit", ({ x, y, pen }) => [
      pen.element("path", {
        d: bands
          .flatMap(({ from, to, middle, reach }) =>
            [middle + reach, middle - reach].map((at) => `M${x(from)},${y(at)}H${x(to)}`),
          )
          .join(""),
      }),
    ]),
    layer("rule", ({ x, y, pen }) => [
      pen.element("path", {
        d: bands.map(({ from, to, middle }) => `M${x(from)},${y(middle)}H${x(to)}`).join(""),
      }),
    ]),
  ];
}

/** Places along a line that words are kept off by, for a line across the whole drawing. */
const PLACES = 40;

/** The lines of each band as washes of no height: words rather stand clear of them, but may cross where they must. */
export function toleranceWashes(
  bands: readonly ToleranceBand[],
): readonly (readonly { readonly x: number; readonly low: number; readonly high: number }[])[] {
  return bands.flatMap(({ from, to, middle, reach }) =>
    [middle + reach, middle, middle - reach].map((at) =>
      Array.from({ length: PLACES + 1 }, (_, i) => ({ x: from + ((to - from) * i) / PLACES, low: at, high: at })),
    ),
  );
}
