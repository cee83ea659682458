import { allSteps } from "../analysis/allSteps.ts";
import type { Database } from "../engine/database.ts";
import { analyseParts } from "./analyseParts.ts";
import { chooseRows, viewRows } from "./chosenRows.ts";
import { stretchesOf } from "./kilnHours/stretches.ts";
import { withStretches } from "./kilnHours/withStretches.ts";
import { readLoggedRows, wholeRows } from "./loggedRows.ts";
import type { PublishedLogs } from "./publishedLogs.ts";
import type { Report } from "./report.ts";
import { rowFilter } from "./rowFilter.ts";
import { followVarieties, withVarietiesFollowUp } from "./varieties/followUp.ts";
import type { View } from "./view.ts";
import { falseSignalsOf, withFalseSignals } from "./yieldMoisture/falseSignals.ts";

/**
 * Everything the pages say for one view of the logs, at once: for the build. The browser's worker takes the same steps and
 * sends each part when it is asked for. `database` holds the published tables, joined.
 *
 * @param everyMonth review every month, or only the one of the view
 */
export async function buildReport(
  database: Database,
  published: PublishedLogs,
  view: View,
  { everyMonth = true }: { readonly everyMonth?: boolean } = {},
): Promise<Report> {
  const logged = await readLoggedRows(database);
  const chosen = await chooseRows(database, logged, rowFilter(view, published.house.timeZone));
  const rows = viewRows(wholeRows(logged, published), chosen);
  const parts = analyseParts({ logged, published, view, rows, everyMonth });
  const hours = await parts.kilnHours();
  const charts = await parts.yieldMoisture();
  const varieties = await parts.varieties();
  return {
    ...rows,
    kilnHours: withStretches(hours, stretchesOf(hours.kilnHours)),
    yieldMoisture: withFalseSignals(charts, falseSignalsOf(charts)),
    thermostat: await parts.thermostat(),
    varieties: withVarietiesFollowUp(varieties, allSteps(followVarieties(varieties))),
    steepGermination: await parts.steepGermination(),
    changes: await parts.changes(),
    review: await parts.review(),
  };
}
