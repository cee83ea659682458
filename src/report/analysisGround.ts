import type { LoggedRows } from "./loggedRows.ts";
import type { PublishedLogs } from "./publishedLogs.ts";
import type { ReportRows } from "./report.ts";
import type { View } from "./view.ts";

/** What a report is worked out from: everything logged, the house's settings, and what a view chooses of it. */
export interface AnalysisGround {
  readonly logged: LoggedRows;
  readonly published: PublishedLogs;
  readonly view: View;
  /** The rows that the view chooses. */
  readonly rows: ReportRows;
  /** Work out every month's review, as the build does; else only the month that the view shows. */
  readonly everyMonth?: boolean;
  /** Only what a month's facts are drawn from is wanted: what is dear and no fact looks at is left out. */
  readonly forFacts?: boolean;
}
