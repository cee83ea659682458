import type { FigureSettings } from "../../figures/figureSettings.ts";
import type { FigureSpec } from "../../figures/figureSpec.ts";
import { checksFigure } from "../../figures/thermostat/checksFigure.ts";
import { cyclesCloseUp } from "../../figures/thermostat/cyclesCloseUp.ts";
import { fanFigure } from "../../figures/thermostat/fanFigure.ts";
import { offsetsFigure } from "../../figures/thermostat/offsetsFigure.ts";
import { swingAndRiseFigure } from "../../figures/thermostat/swingAndRiseFigure.ts";
import type { ThermostatLoad } from "../../malting/thermostat/thermostatLoad.ts";
import type { LoadRow } from "../../report/loadRow.ts";
import type { KilnCurve } from "../../report/runPageResult.ts";
import type { HoldJudgement, KilnThermostat } from "../../report/thermostatResult.ts";

export interface HoldFigures {
  readonly offsets: FigureSpec | null;
  readonly swingAndRise: FigureSpec | null;
}

/** What is drawn of one kiln; what its readings cannot carry is null. This file alone declares the page's figures. */
export interface ThermostatFigures {
  readonly drying: HoldFigures;
  readonly cure: HoldFigures;
  readonly checks: FigureSpec | null;
  readonly fan: FigureSpec | null;
}

/** An id of its own for each drawing of a page, even where two kilns' names differ only by signs that no id has. */
const named = (spec: FigureSpec | null, suffix: string): FigureSpec | null =>
  spec === null ? null : { ...spec, id: `${spec.id}${suffix}` };

/** One load, or loads all alike, make no picture: the sentence beside it says all. */
const varies = ({ points }: HoldJudgement): boolean => new Set(points.map(({ offsetKelvin }) => offsetKelvin)).size > 1;

const ofHold = (
  judgement: HoldJudgement | null,
  kiln: KilnThermostat,
  settings: FigureSettings,
  suffix: string,
): HoldFigures => ({
  offsets: judgement === null || !varies(judgement) ? null : named(offsetsFigure(judgement, kiln, settings), suffix),
  swingAndRise:
    judgement === null || !varies(judgement) ? null : named(swingAndRiseFigure(judgement, kiln, settings), suffix),
});

/** @param suffix ends every id: empty for the only kiln of a page */
export function thermostatFigures(kiln: KilnThermostat, settings: FigureSettings, suffix: string): ThermostatFigures {
  return {
    drying: ofHold(kiln.drying, kiln, settings, suffix),
    cure: ofHold(kiln.cure, kiln, settings, suffix),
    checks: named(checksFigure(kiln, settings), suffix),
    fan: named(fanFigure(kiln, settings), suffix),
  };
}

/** The last cycles of both holds of one load. */
export interface CloseUpFigures {
  readonly drying: FigureSpec | null;
  readonly cure: FigureSpec | null;
}

/**
 * Null where the load's readings are not at hand, or no such hold was found in them.
 *
 * @param probeAtBulb whether the probe of the load's kiln sits at the thermostat's bulb
 */
export function closeUpFigures(
  curve: KilnCurve | null,
  load: LoadRow | null,
  read: ThermostatLoad | undefined,
  settings: FigureSettings,
  probeAtBulb: boolean,
): CloseUpFigures {
  if (curve === null || load === null || read === undefined) return { drying: null, cure: null };
  const until = (to: number | null, suffix: string): FigureSpec | null =>
    to === null ? null : named(cyclesCloseUp(curve, load, read, settings, { probeAtBulb, to }), suffix);
  return { drying: until(read.dryingTo, ""), cure: until(read.cureTo, "-cure") };
}
