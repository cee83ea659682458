import { pressureAtAltitude } from "../../src/malting/moistAir.ts";
import type { KilnHoursOptions } from "../../src/report/kilnHours/analyseKilnHours.ts";
import { TIME_ZONE } from "../demo/clock.ts";
import { logTargets } from "../demo/logHouse.ts";
import { ALTITUDE_METRES } from "../demo/truths.ts";

function targetMoisturePercent(): number {
  const line = logTargets().find(({ variety, measure }) => variety === "any" && measure === "final_moisture_pct");
  const target = Number(line?.target);
  if (!Number.isFinite(target)) throw new Error("the invented house names no target moisture for any variety");
  return target;
}

/** How the invented house's loads are analysed: with the air that was logged at loading, and nothing left out by hand. */
export const kilnOptions: KilnHoursOptions = {
  air: "at_loading",
  without: new Set(),
  targetMoisturePercent: targetMoisturePercent(),
  pressurePascals: pressureAtAltitude(ALTITUDE_METRES),
  timeZone: TIME_ZONE,
};
