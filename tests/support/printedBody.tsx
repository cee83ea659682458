import { JSDOM } from "jsdom";
import { h } from "preact";
import { KilnHours } from "../../src/bodies/KilnHours.tsx";
import { renderBody } from "../../src/bodies/renderBody.ts";
import { YieldMoisture } from "../../src/bodies/YieldMoisture.tsx";
import { answerWhatIf } from "../../src/report/kilnHours/whatIf.ts";
import type { Report } from "../../src/report/report.ts";
import type { View } from "../../src/report/view.ts";

/** The text of a page's body as the build would print it for this report and view. */
export function printedBody(page: "kiln-hours/" | "yield-and-moisture/", report: Report, view: View): string {
  const { window } = new JSDOM("");
  const units = view.units ?? report.house.units;
  const { kilnHours } = report;
  if (kilnHours.usual === null) throw new RangeError("printedBody requires logs that carry a what-if");
  const ask = (inputs: Parameters<typeof answerWhatIf>[1]) => answerWhatIf(kilnHours, inputs, units);
  const body =
    page === "kiln-hours/"
      ? h(KilnHours, { report, whatIf: ask(kilnHours.usual), answerWhatIf: ask })
      : h(YieldMoisture, { report });
  const context = {
    house: report.house,
    view,
    document: window.document,
    hrefTo: (path: string) => `/${path}`,
    built: true,
  };
  const { document } = new JSDOM(renderBody(body, context)).window;
  return (document.body.textContent ?? "").replace(/\s+/g, " ").trim();
}
