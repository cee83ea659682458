import type { Markish } from "@observablehq/plot";
import type { KilnThermostat, LoggerTrust } from "../../report/thermostatResult.ts";
import { printDate } from "../../units/instant.ts";
import { print, printSigned } from "../../units/print.ts";
import { shownAs } from "../../units/quantity.ts";
import { footAxis, footHeight } from "../axes.ts";
import { type FigureSettings, halfWidth, narrowWidth, textSize } from "../figureSettings.ts";
import type { FigureSpec, Frame } from "../figureSpec.ts";
import { type Label, labelLayer, lineHeight } from "../labelLayer.ts";
import { layer } from "../layer.ts";
import { countOf, latestFirst } from "../listedRows.ts";
import { dotRadius } from "../scatter.ts";
import { textWidth } from "../textWidth.ts";
import { paddedSpan } from "../ticks.ts";
import { dayTicks, monthTicks } from "../timeTicks.ts";
import { asOf, type CheckAge, checkAges, countedChecks, JUDGED_PROBE } from "./checkAge.ts";
import { checksSentence, errorOf } from "./checksSentence.ts";
import { degreeWords } from "./degreeWords.ts";
import { hatch } from "./hatch.ts";
import { nameInId } from "./nameInId.ts";
import { ownStripAxes, ownStrips, stripScale } from "./ownStrips.ts";

type Check = LoggerTrust["checks"][number];
const DAY = 86_400_000;
const PROBES: readonly { readonly probe: string; readonly name: string }[] = [
  { probe: JUDGED_PROBE, name: "air on" },
  { probe: "air_off", name: "air off" },
  { probe: "bed", name: "bed" },
];
/** Within this of 0 °C a check is an ice point, which alone corrects no hot readings. */
const ICE_POINT_KELVIN = 2;
/** An interval of two standard uncertainties holds about 95 of 100 (Guide to the expression of uncertainty, 6.2; from memory). */
const COVERAGE_FACTOR = 2;
/** Height of the bar of ages, px. */
const AGE_BAR = 12;

const isIcePoint = ({ referenceCelsius }: Check): boolean => Math.abs(referenceCelsius) <= ICE_POINT_KELVIN;

/**
 * What the logger's checks found in time: reading less reference, a strip a probe on one scale, ice points hollow, the
 * latest check of air on with its uncertainty; and beneath, when the last check was recent enough.
 *
 * @returns null where the logger was never checked
 */
export function checksFigure({ kiln, logger }: KilnThermostat, settings: FigureSettings): FigureSpec | null {
  const { checks, loggerDays, uncertaintyKelvin } = logger;
  if (checks.length === 0) return null;
  const { units, timeZone } = settings;
  const { shown, bareDifference } = degreeWords(settings);
  const { unit } = shownAs("temperatureDifference", units);
  const ages = checkAges(logger);
  const reach = uncertaintyKelvin === null ? 0 : COVERAGE_FACTOR * uncertaintyKelvin;
  const last = countedChecks(logger).at(-1);
  const latest = checks.filter(({ at, probe }) => probe === last?.probe && Math.abs(at - (last?.at ?? 0)) < DAY / 2);
  const probes = PROBES.filter(({ probe }) => checks.some((check) => check.probe === probe));
  const values = [
    0,
    ...checks.map((check) => errorOf(check)),
    ...latest.flatMap((check) => [errorOf(check) - reach, errorOf(check) + reach]),
  ].map(shown);

  const options = (frame: Frame) => {
    const size = textSize(frame);
    const x = paddedSpan([...checks.map(({ at }) => at), asOf(logger)], 0.04, 14 * DAY);
    const few = x[1] - x[0] < 70 * DAY;
    const dates = few ? dayTicks(x[0], x[1], 4, timeZone) : monthTicks(x[0], x[1], 4, timeZone);
    const { strips, inner } = ownStrips(
      probes.map(({ name }) => ({ name: `${name}, ${unit} over the reference`, values, least: shown(1) })),
      { height: frame.narrow ? 84 : 96, size, count: 4, print: printSigned },
    );
    const ageTop = inner + Math.round(size * 1.5);
    const whole = ageTop + AGE_BAR + 6;
    const radius = dotRadius(frame) + 0.4;
    const placed = probes.flatMap(({ probe }, row) =>
      checks.flatMap((check) => {
        const strip = strips[row];
        return check.probe === probe && strip ? [{ check, x: check.at, y: strip.heightOf(shown(errorOf(check))) }] : [];
      }),
    );
    const perDegree = (strips[0]?.heightOf(0) ?? 0) - (strips[0]?.heightOf(1) ?? 0);
    const latestPlaced = placed.filter(({ check }) => latest.includes(check));
    const labels = latestPlaced.map(
      ({ check, ...at }): Label => ({
        ...at,
        reach: radius,
        prefer: at.x > (x[0] + x[1]) / 2 ? 180 : 0,
        farthest: 60,
        role: "soft",
        lines: [{ text: `at ${print(check.referenceCelsius, "temperature", units, { decimals: 0 })}` }],
      }),
    );
    const marks: Markish[] = [
      ownStripAxes(strips, size),
      footAxis(dates, size),
      layer("rule", ({ inside, pen }) => [
        pen.element("path", {
          d: strips.map(({ heightOf }) => `M${inside.left},${inside.top + heightOf(0)}H${inside.right}`).join(""),
        }),
      ]),
      layer("tick", ({ x: toX, y: toY, pen }) =>
        reach === 0
          ? []
          : [
              pen.element("path", {
                d: latestPlaced
                  .map(
                    (at) =>
                      `M${toX(at.x)},${toY(at.y - shown(reach) * perDegree)}V${toY(at.y + shown(reach) * perDegree)}`,
                  )
                  .join(""),
              }),
            ],
      ),
      ...([false, true] as const).map((ice) =>
        layer(ice ? "hollow" : "dots mark-ink", ({ x: toX, y: toY, pen }) =>
          placed
            .filter(({ check }) => isIcePoint(check) === ice)
            .map((at) => pen.element("circle", { cx: toX(at.x), cy: toY(at.y), r: radius })),
        ),
      ),
      layer("ages", ({ x: toX, inside, pen }) => {
        const top = inside.top + ageTop;
        const edges = ({ from, to }: CheckAge) => ({ left: toX(from), right: toX(to), top, bottom: top + AGE_BAR });
        return [
          pen.element(
            "text",
            { class: "label strong", x: 0, y: top - Math.round(size * 0.45), "text-anchor": "start" },
            [`last check no older than ${countOf(loggerDays, "day")}; hatched: too old`],
          ),
          ...ages.map((age) => {
            const { left, right, top: up, bottom } = edges(age);
            const box = [
              { x: left, y: up },
              { x: right, y: up },
              { x: right, y: bottom },
              { x: left, y: bottom },
            ];
            return age.recent
              ? pen.element("rect", { class: "recent", x: left, y: up, width: right - left, height: AGE_BAR })
              : pen.element("path", { class: "hatch", d: hatch(box, 5) });
          }),
        ];
      }),
      labelLayer({
        size,
        labels,
        // Words rather stand clear of the lines of no error.
        washes: strips.map(({ heightOf }) =>
          Array.from({ length: 41 }, (_, i) => ({
            x: x[0] + ((x[1] - x[0]) * i) / 40,
            low: heightOf(0),
            high: heightOf(0),
          })),
        ),
        bounds: (inside) => ({ ...inside, bottom: inside.bottom - AGE_BAR - 6 - lineHeight(size) }),
        marks: placed.map((at) => ({ x: at.x, y: at.y, radius: radius + 1 })),
      }),
    ];
    const marginBottom = footHeight(dates, size);
    return {
      height: whole + 4 + marginBottom,
      marginTop: 4,
      marginRight: 4,
      marginBottom,
      marginLeft: Math.ceil(textWidth("+0.0", size)) + 10,
      x: { domain: x },
      y: { domain: stripScale(whole) },
      marks,
    };
  };

  return {
    id: `logger-checks-${nameInId(kiln)}`,
    title: "Does the logger read true?",
    summary: checksSentence(logger, latest, reach, settings),
    table: latestFirst(
      [...checks].sort((a, b) => a.at - b.at),
      "check",
      [
        { label: "checked", numeric: false },
        { label: "probe", numeric: false },
        { label: "reference", unit: shownAs("temperature", units).unit, numeric: true },
        { label: "reading", unit: shownAs("temperature", units).unit, numeric: true },
        { label: "reading less reference", unit, numeric: true },
        { label: "note", numeric: false },
      ],
      (check) => [
        printDate(check.at, timeZone),
        PROBES.find(({ probe }) => probe === check.probe)?.name ?? check.probe,
        print(check.referenceCelsius, "temperature", units, { bare: true, decimals: 1 }),
        print(check.readingCelsius, "temperature", units, { bare: true, decimals: 1 }),
        bareDifference(errorOf(check)),
        check.note ?? "",
      ],
    ),
    wideWidth: halfWidth,
    narrowWidth,
    printAs: "narrow",
    options,
  };
}
