import { JSDOM } from "jsdom";
import { h } from "preact";
import { Changes } from "../../src/bodies/Changes.tsx";
import { KilnHours } from "../../src/bodies/KilnHours.tsx";
import { renderBody } from "../../src/bodies/renderBody.ts";
import { SteepGermination } from "../../src/bodies/SteepGermination.tsx";
import { Thermostat } from "../../src/bodies/Thermostat.tsx";
import { shownLoad } from "../../src/bodies/thermostat/shownLoad.ts";
import { Varieties } from "../../src/bodies/Varieties.tsx";
import { VarietyPage } from "../../src/bodies/VarietyPage.tsx";
import { YieldMoisture } from "../../src/bodies/YieldMoisture.tsx";
import { answerTrial } from "../../src/report/changes/answerTrial.ts";
import { answerWhatIf } from "../../src/report/kilnHours/whatIf.ts";
import type { Report } from "../../src/report/report.ts";
import type { KilnCurve } from "../../src/report/runPageResult.ts";
import type { View } from "../../src/report/view.ts";

/** A page that other rows make anew. */
export type PrintedPage =
  | "steep-and-germination/"
  | "kiln-hours/"
  | "yield-and-moisture/"
  | "thermostat/"
  | "varieties/"
  | "varieties/Brunolt/"
  | "changes/";

/**
 * The text of a page's body as the build would print it for this report and view.
 *
 * @param curves the readings of the loads, by load, as the logs have them
 */
export function printedBody(
  page: PrintedPage,
  report: Report,
  view: View,
  curves: ReadonlyMap<string, KilnCurve>,
): string {
  const { window } = new JSDOM("");
  const units = view.units ?? report.house.units;
  const { kilnHours } = report;
  if (kilnHours.usual === null) throw new RangeError("printedBody requires logs that carry a what-if");
  const ask = (inputs: Parameters<typeof answerWhatIf>[1]) => answerWhatIf(kilnHours, inputs, units);
  const load = shownLoad(report, view.firing);
  const bodies = {
    "kiln-hours/": h(KilnHours, { report, whatIf: ask(kilnHours.usual), answerWhatIf: ask }),
    "steep-and-germination/": h(SteepGermination, { report }),
    "yield-and-moisture/": h(YieldMoisture, { report }),
    "varieties/": h(Varieties, { report }),
    "varieties/Brunolt/": h(VarietyPage, { report, variety: "Brunolt" }),
    "changes/": h(Changes, { report, trial: answerTrial(report.changes.plans, view) }),
    "thermostat/": h(Thermostat, { report, load, curve: curves.get(load?.load ?? "") ?? null }),
  };
  const context = {
    house: report.house,
    view,
    document: window.document,
    hrefTo: (path: string) => `/${path}`,
    built: true,
  };
  const { document } = new JSDOM(renderBody(bodies[page], context)).window;
  return (document.body.textContent ?? "").replace(/\s+/g, " ").trim();
}
