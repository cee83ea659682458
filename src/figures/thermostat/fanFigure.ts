import type { Markish } from "@observablehq/plot";
import type { KilnThermostat } from "../../report/thermostatResult.ts";
import { printDate } from "../../units/instant.ts";
import { print, printNumber } from "../../units/print.ts";
import { shownAs } from "../../units/quantity.ts";
import { footAxis, footHeight } from "../axes.ts";
import { type FigureSettings, halfWidth, narrowWidth, textSize } from "../figureSettings.ts";
import type { FigureSpec, Frame } from "../figureSpec.ts";
import { countOf, latestFirst } from "../listedRows.ts";
import { loadCell, loadHref } from "../loadPoints.ts";
import { scatter } from "../scatter.ts";
import { textWidth } from "../textWidth.ts";
import { paddedSpan } from "../ticks.ts";
import { dayTicks, monthTicks } from "../timeTicks.ts";
import { printDateSpan } from "./dateSpan.ts";
import { degreeWords } from "./degreeWords.ts";
import { nameInId } from "./nameInId.ts";
import { ownStripAxes, ownStrips, stripScale } from "./ownStrips.ts";

type FanLoad = KilnThermostat["fan"][number];
const DAY = 86_400_000;

/**
 * A fan that has a thermostat of its own, load by load: how far from its set point it switches, and for what share of
 * the hold it blew, which the airflow goes with.
 *
 * @returns null where no load has either
 */
export function fanFigure({ fan, kiln, probeAtBulb }: KilnThermostat, settings: FigureSettings): FigureSpec | null {
  const loads = shownFan(fan, probeAtBulb).filter(
    ({ offsetKelvin, shareOfHold }) => offsetKelvin !== null || shareOfHold !== null,
  );
  if (loads.length === 0) return null;
  const { units, timeZone } = settings;
  const { unit } = shownAs("temperatureDifference", units);
  const { shown, difference, bareDifference } = degreeWords(settings);
  const percent = (share: number): string => `${printNumber(100 * share, 0)} %`;
  const offsets = loads.flatMap(({ offsetKelvin }) => offsetKelvin ?? []);
  const shares = loads.flatMap(({ shareOfHold }) => shareOfHold ?? []);
  const measures = [
    ...(offsets.length === 0
      ? []
      : [
          {
            name: probeAtBulb ? `switches from its set point, ${unit}` : `switches from where it mostly does, ${unit}`,
            values: [0, ...offsets].map(shown),
            least: shown(2),
            whole: false,
            valueOfLoad: (load: FanLoad) => (load.offsetKelvin === null ? null : shown(load.offsetKelvin)),
            hint: (load: FanLoad) => difference(load.offsetKelvin ?? 0),
          },
        ]),
    ...(shares.length === 0
      ? []
      : [
          {
            name: "on, % of the drying hold",
            values: [0, 100],
            least: 100,
            whole: true,
            valueOfLoad: (load: FanLoad) => (load.shareOfHold === null ? null : 100 * load.shareOfHold),
            hint: (load: FanLoad) => `on for ${percent(load.shareOfHold ?? 0)} of the hold`,
          },
        ]),
  ];

  const options = (frame: Frame) => {
    const size = textSize(frame);
    const x = paddedSpan(
      loads.map(({ at }) => at),
      0.03,
      14 * DAY,
    );
    const few = x[1] - x[0] < 70 * DAY;
    const dates = few ? dayTicks(x[0], x[1], 4, timeZone) : monthTicks(x[0], x[1], 4, timeZone);
    const { strips, inner } = ownStrips(measures, { height: frame.narrow ? 70 : 84, size, count: 4 });
    const points = measures.flatMap((measure, row) =>
      loads.flatMap((load) => {
        const value = measure.valueOfLoad(load);
        const strip = strips[row];
        if (value === null || !strip) return [];
        return [
          {
            x: load.at,
            y: strip.heightOf(value),
            href: loadHref(load.runs, load.load, settings),
            hint: () => `${load.runs.join(", ")}, ${printDate(load.at, timeZone)}: ${measure.hint(load)}`,
          },
        ];
      }),
    );
    const marks: Markish[] = [ownStripAxes(strips, size), footAxis(dates, size), scatter(points, frame)];
    const marginBottom = footHeight(dates, size);
    return {
      height: inner + 4 + marginBottom,
      marginTop: 4,
      marginRight: 4,
      marginBottom,
      marginLeft: Math.ceil(textWidth("+0.0", size)) + 10,
      x: { domain: x },
      y: { domain: stripScale(inner) },
      marks,
    };
  };

  return {
    id: `thermostat-fan-${nameInId(kiln)}`,
    title: "What does the fan’s own thermostat do?",
    summary: `${countOf(loads.length, "load")} with the fan on a thermostat of its own, ${printDateSpan(Math.min(...loads.map(({ at }) => at)), Math.max(...loads.map(({ at }) => at)), timeZone)}.${spanSaid(offsets, (kelvin, bare) => (bare ? bareDifference : difference)(kelvin), "It switched", probeAtBulb ? "from its set point" : "from the middle of all these loads; the probe is not at its bulb, so only changes are drawn")}${spanSaid(shares, (share, bare) => (bare ? printNumber(100 * share, 0) : percent(share)), "It blew for", "of the drying hold, and the air through the bed goes with that share")}`,
    table: latestFirst(
      loads,
      "load",
      [
        { label: "run", numeric: false },
        { label: "loaded", numeric: false },
        { label: "fan set", unit: shownAs("temperature", units).unit, numeric: true },
        { label: probeAtBulb ? "offset" : "change", unit, numeric: true },
        { label: "on", unit: "% of the hold", numeric: true },
      ],
      (load) => [
        loadCell(load.runs, load.load, settings),
        printDate(load.at, timeZone),
        load.setCelsius === null ? "" : print(load.setCelsius, "temperature", units, { bare: true }),
        load.offsetKelvin === null ? "" : bareDifference(load.offsetKelvin),
        load.shareOfHold === null ? "" : printNumber(100 * load.shareOfHold, 0),
      ],
    ),
    wideWidth: halfWidth,
    narrowWidth,
    printAs: "narrow",
    options,
  };
}

/** Where the probe is not at the fan thermostat's bulb, offsets count from the middle of all loads: what they are says where it is. */
function shownFan(fan: readonly FanLoad[], probeAtBulb: boolean): readonly FanLoad[] {
  if (probeAtBulb) return fan;
  const offsets = fan.flatMap(({ offsetKelvin }) => offsetKelvin ?? []).sort((a, b) => a - b);
  const half = offsets.length >> 1;
  const middle = ((offsets[half] ?? 0) + (offsets[offsets.length % 2 === 0 ? half - 1 : half] ?? 0)) / 2;
  return fan.map((load) => ({
    ...load,
    offsetKelvin: load.offsetKelvin === null ? null : load.offsetKelvin - middle,
  }));
}

function spanSaid(values: readonly number[], say: SayValue, lead: string, rest: string): string {
  if (values.length === 0) return "";
  const [low, high] = [Math.min(...values), Math.max(...values)];
  const [least, most] = [say(low, true), say(high, false)];
  return ` ${lead} ${say(low, false) === most ? most : `${least} to ${most}`} ${rest}.`;
}

/** @param bare without its unit, at the lower end of a range */
type SayValue = (value: number, bare: boolean) => string;
