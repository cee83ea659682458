import type { PlotOptions } from "@observablehq/plot";
import { printDate } from "../units/instant.ts";
import { footHeight, valueAxisWidth } from "./axes.ts";
import { type Story, storyCurve } from "./batchCurve.ts";
import { BAR, stageStrip, storyStages } from "./batchStages.ts";
import { type FigureSettings, fullWidth, narrowWidth, textSize } from "./figureSettings.ts";
import type { FigureSpec, Frame } from "./figureSpec.ts";

/** Room between the bars and the curve, in which the kiln's bar opens out to the curve's width, px. */
const FAN = 28;

/**
 * A batch's way from steep to malt in one drawing: its stages as bars on one line of time, and the kiln's bar opened out
 * into the logger's curve. Degrees are said in both unit systems, since it is drawn for readers of either.
 *
 * @returns null where no stage has both its ends
 */
export function batchStory(story: Story, settings: Pick<FigureSettings, "units" | "timeZone">): FigureSpec | null {
  const stages = storyStages(story.run);
  if (stages.length === 0) return null;
  const hasCurve = storyCurve(story, { width: fullWidth, narrow: false }, settings) !== null;

  const options = (frame: Frame): PlotOptions => {
    const size = textSize(frame);
    const curve = storyCurve(story, frame, settings);
    const top = Math.round(size * 1.25) + 8;
    const opensOut = curve !== null && stages.some(({ role }) => role === "kiln");
    const strip = stageStrip(stages, size, top, opensOut);
    if (curve === null) {
      const height = top + BAR + 2;
      return {
        height,
        marginTop: 0,
        marginRight: 1,
        marginBottom: 0,
        marginLeft: 1,
        x: { domain: [0, 1] },
        marks: [strip],
      };
    }
    const marginTop = top + BAR + FAN;
    return {
      height: marginTop + (frame.narrow ? 210 : 250) + footHeight(curve.across, size, true),
      marginTop,
      marginRight: curve.names,
      marginBottom: footHeight(curve.across, size, true),
      marginLeft: valueAxisWidth(curve.down, size),
      x: { domain: curve.x },
      y: { domain: curve.y },
      marks: [strip, ...curve.marks],
    };
  };

  const first = Math.min(...stages.map(({ from }) => from));
  const last = Math.max(...stages.map(({ to }) => to));
  const said = stages.map(({ name, said: length }) => `${name} ${length}`).join(", ");
  const dates = `${printDate(first, settings.timeZone)} to ${printDate(last, settings.timeZone)}`;
  return {
    id: "story",
    title: "From steep to malt",
    summary: `${dates}: ${said}.${hasCurve ? "" : " The kiln's logger has nothing on this batch."}`,
    table: {
      columns: [
        { label: "stage", numeric: false },
        { label: "from", numeric: false },
        { label: "to", numeric: false },
        { label: "took", numeric: false },
      ],
      rows: stages.map(({ name, from, to, said: length }) => [
        name,
        printDate(from, settings.timeZone),
        printDate(to, settings.timeZone),
        length,
      ]),
    },
    wideWidth: fullWidth,
    narrowWidth,
    printAs: "wide",
    options,
  };
}
