import { writeFileSync } from "node:fs";
import { JSDOM } from "jsdom";
import { h } from "preact";
import { it } from "vitest";
import { renderBody } from "../../src/bodies/renderBody.ts";
import { Thermostat } from "../../src/bodies/Thermostat.tsx";
import { shownLoad } from "../../src/bodies/thermostat/shownLoad.ts";
import { wholeView } from "../../src/report/view.ts";
import { madeUpReport } from "../support/madeUpReport.ts";
import { madeUpKiln, madeUpCurve } from "../support/madeUpThermostat.ts";
it("writes", () => {
  const { document } = new JSDOM("").window;
  for (const [n, c, p, u, stale] of [[0,"creep",true,"metric",false],[5,"creep",true,"metric",false],[60,"creep",true,"metric",false],[60,"step",false,"us",true],[60,"steady",true,"metric",false]] as const) {
    const bare = madeUpReport(n);
    const k = madeUpKiln(bare.loads, c, { probeAtBulb: p });
    const kiln = stale ? { ...k, logger: { ...k.logger, stale: true, daysSinceCheck: 140.3, faults: ["On 14 Oct 2024 the logger read 1.2 °C high at about 44 °C."] } } : k;
    const report = { ...bare, thermostat: { kilns: [kiln] } }; const load = shownLoad(report, null); const body = renderBody(h(Thermostat, { report, load, curve: load === null ? null : madeUpCurve(load) }), { house: report.house, view: { ...wholeView, units: u }, document, hrefTo: (x: string) => `/${x}`, built: true });
    writeFileSync(`/tmp/th/${n}-${c}.html`, body);
  }
});
