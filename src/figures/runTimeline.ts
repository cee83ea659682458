import type { Markish, PlotOptions } from "@observablehq/plot";
import type { RunRow } from "../report/runRow.ts";
import { printMoment } from "../units/instant.ts";
import { print } from "../units/print.ts";
import { footAxis, footHeight } from "./axes.ts";
import type { Box } from "./box.ts";
import { type FigureSettings, fullWidth, narrowWidth, textSize } from "./figureSettings.ts";
import type { FigureSpec, Frame } from "./figureSpec.ts";
import { lineHeight } from "./labelLayer.ts";
import { layer } from "./layer.ts";
import { placeLabels } from "./placeLabels.ts";
import { textWidth } from "./textWidth.ts";
import { dayTicks } from "./timeTicks.ts";

const HOUR = 3_600_000;

interface Stage {
  readonly name: string;
  readonly role: "steep" | "germination" | "kiln";
  readonly past: string;
  readonly from: number;
  /** Null while the stage is under way. */
  readonly to: number | null;
}

function stagesOf(run: RunRow): readonly Stage[] {
  const stages: readonly (Omit<Stage, "from"> & { readonly from: number | null })[] = [
    { name: "steep", role: "steep", past: "steeped", from: run.steepStartedAt, to: run.steepEndedAt },
    {
      name: "germination",
      role: "germination",
      past: "germinated",
      from: run.germinationStartedAt,
      to: run.germinationEndedAt,
    },
    { name: "kiln", role: "kiln", past: "kilned", from: run.loadedAt, to: run.unloadedAt },
  ];
  return stages.flatMap((stage) => (stage.from === null ? [] : [{ ...stage, from: stage.from }]));
}

/**
 * One run from steep to malt on one time line: each stage a bar in its own hue with its hours said on it, days below.
 * A stage under way has no end and is drawn as a stub.
 *
 * @returns null where no stage has a start.
 */
export function runTimeline(run: RunRow, settings: FigureSettings): FigureSpec | null {
  const stages = stagesOf(run);
  if (stages.length === 0) return null;
  const { units, timeZone } = settings;
  const ends = stages.flatMap((stage) => [stage.from, stage.to ?? stage.from]);
  const from = Math.min(...ends);
  const last = Math.max(...ends, from + HOUR);
  // Room for the stub of a stage under way.
  const to = stages.some((stage) => stage.to === null) ? last + (last - from) * 0.06 + 6 * HOUR : last;
  const hoursOf = (stage: Stage): string =>
    stage.to === null ? "under way" : print((stage.to - stage.from) / HOUR, "hours", units);

  const options = (frame: Frame): PlotOptions => {
    const size = textSize(frame);
    const days = dayTicks(from, to, frame.narrow ? 3 : 8, timeZone);
    const thick = frame.narrow ? 30 : 36;
    const perHour = (frame.width - 2) / (to - from);
    const beside = stages.filter(
      (stage) => !saidOnBar(`${stage.name} ${hoursOf(stage)}`, ((stage.to ?? to) - stage.from) * perHour, size),
    );
    // Up to three names above their bars: narrow bars stand close, so two rows for more than one.
    const rows = beside.length === 0 ? 0 : beside.length === 1 ? 1.5 : 2.6;
    const marks: Markish[] = [
      footAxis(days, size, { names: "after" }),
      layer("stages", ({ x, inside, pen }) => {
        const bars = stages.map((stage) => {
          const left = x(stage.from);
          const right = x(stage.to ?? to);
          return { stage, left, right: Math.max(right, left + 2) };
        });
        const top = inside.bottom - thick - 10;
        const drawn = bars.map(({ stage, left, right }) =>
          pen.element("rect", {
            class: `mark-${stage.role}`,
            x: left,
            y: top,
            width: right - left,
            height: thick,
            ...(stage.to === null ? { "fill-opacity": 0.45 } : {}),
          }),
        );
        if (run.cureStartedAt !== null && run.loadedAt !== null && run.cureStartedAt > run.loadedAt) {
          const at = x(run.cureStartedAt);
          drawn.push(pen.element("path", { class: "parting", d: `M${at},${top}v5M${at},${top + thick}v-5` }));
        }
        const said = bars.map((bar) => {
          const text = `${bar.stage.name} ${hoursOf(bar.stage)}`;
          return { ...bar, text, wide: textWidth(text, size, 600) };
        });
        const fits = (b: (typeof said)[number]): boolean => saidOnBar(b.text, b.right - b.left, size);
        const onBar = said.filter(fits);
        const beside = said.filter((b) => !fits(b));
        for (const { text, left } of onBar) {
          drawn.push(
            pen.element(
              "text",
              { class: "on-bar", x: left + 8, y: top + thick / 2 + size * 0.35, "text-anchor": "start" },
              [text],
            ),
          );
        }
        // What does not fit its bar stands above it.
        const room: Box = { left: 0, right: inside.right, top: 0, bottom: top };
        placeLabels(
          beside.map((b) => ({
            width: b.wide,
            height: lineHeight(size),
            anchor: { x: (b.left + b.right) / 2, y: top },
            farthest: 200,
          })),
          [],
          room,
        ).forEach((place, i) => {
          const bar = beside[i];
          if (!place || !bar) return;
          const { box, leader } = place;
          if (leader) {
            const { from: a, to: b } = leader;
            drawn.push(pen.element("path", { class: "leader", d: `M${a.x},${a.y}L${b.x},${b.y}` }));
          }
          drawn.push(
            pen.element(
              "text",
              {
                class: `label strong ${bar.stage.role}`,
                x: (box.left + box.right) / 2,
                y: box.top + size * 0.97,
                "text-anchor": "middle",
              },
              [bar.text],
            ),
          );
        });
        return drawn;
      }),
    ];
    return {
      height: Math.round(rows * lineHeight(size) + thick + 11 + footHeight(days, size)),
      marginTop: 0,
      marginRight: 1,
      marginBottom: footHeight(days, size),
      marginLeft: 1,
      x: { domain: [from, to] },
      marks,
    };
  };

  const finished = stages.filter((stage) => stage.to !== null);
  const sentence = finished.map((stage) => `${stage.past} ${hoursOf(stage)}`).join(", ");
  const underWay = stages.find((stage) => stage.to === null);
  const cure =
    run.dryingHours === null || run.unloadedAt === null
      ? ""
      : `, the cure begun after ${print(run.dryingHours, "hours", units)}`;
  const whole = run.unloadedAt === null ? "" : `; ${daysAndHours(run.unloadedAt - from)} in all`;
  const parts = [
    sentence === "" ? "" : `${sentence[0]?.toUpperCase()}${sentence.slice(1)}${cure}${whole}.`,
    underWay
      ? `${underWay.name[0]?.toUpperCase()}${underWay.name.slice(1)} under way since ${printMoment(underWay.from, timeZone)}.`
      : "",
  ].filter((part) => part !== "");
  return {
    id: "run-timeline",
    title: "From steep to malt",
    summary: parts.join(" "),
    table: {
      columns: [
        { label: "stage", numeric: false },
        { label: "from", numeric: false },
        { label: "to", numeric: false },
        { label: "hours", unit: "h", numeric: true },
      ],
      rows: stages.map((stage) => [
        stage.name,
        printMoment(stage.from, timeZone),
        stage.to === null ? "under way" : printMoment(stage.to, timeZone),
        stage.to === null ? "" : print((stage.to - stage.from) / HOUR, "hours", units, { bare: true }),
      ]),
    },
    wideWidth: fullWidth,
    narrowWidth,
    printAs: "wide",
    options,
  };
}

/** Whether a stage's name and hours fit on its own bar. */
const saidOnBar = (text: string, width: number, size: number): boolean => textWidth(text, size, 600) + 16 <= width;

/** `6 days 4 h`, rounded to the hour. */
function daysAndHours(milliseconds: number): string {
  const hours = Math.round(milliseconds / HOUR);
  const days = Math.floor(hours / 24);
  return `${days === 0 ? "" : `${days} day${days === 1 ? "" : "s"} `}${hours % 24}\u00a0h`;
}
