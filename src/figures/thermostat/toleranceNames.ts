import type { KilnThermostat } from "../../report/thermostatResult.ts";
import { shownAs } from "../../units/quantity.ts";
import type { EndLabel } from "../controlCharts/endLabels.ts";
import type { FigureSettings } from "../figureSettings.ts";
import type { Frame } from "../figureSpec.ts";
import { degreeWords } from "./degreeWords.ts";
import type { ToleranceBand } from "./toleranceBands.ts";

/** What the axis measures; where the probe is not at the bulb, that the tolerance is counted from elsewhere. */
export function axisTitle({ probeAtBulb }: KilnThermostat, { units }: FigureSettings, { narrow }: Frame): string {
  const { unit } = shownAs("temperatureDifference", units);
  if (probeAtBulb)
    return narrow
      ? `${unit} from set point`
      : `${unit} from set point, mean over whole cycles at the usual heater duty`;
  return narrow
    ? `${unit} of change; probe not at the bulb`
    : `${unit} from the level of its stretch before any change, mean over whole cycles; the probe is not at the bulb`;
}

/** Names of the latest tolerance and of what it is counted from, and of the checks along the foot. */
export function endNames(
  bands: readonly ToleranceBand[],
  kiln: KilnThermostat,
  settings: FigureSettings,
  { narrow }: Frame,
  railAt: number | null,
): EndLabel[] {
  const { bareDifference } = degreeWords(settings);
  const band = bands.at(-1);
  const rail: EndLabel[] =
    railAt === null ? [] : [{ y: railAt, role: "soft", rows: [narrow ? "checked" : "logger checked"] }];
  if (!band) return rail;
  const edges = ([1, -1] as const).map((side): EndLabel => {
    const text = bareDifference(side * kiln.toleranceKelvin);
    return {
      y: band.middle + side * band.reach,
      role: "soft",
      rows: narrow ? ["tolerance", text] : [`tolerance ${text}`],
    };
  });
  return [
    ...edges,
    { y: band.middle, role: "ink", rows: [kiln.probeAtBulb ? "set point" : narrow ? "before" : "level before"] },
    ...rail,
  ];
}
