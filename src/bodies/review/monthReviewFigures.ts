import type { FigureSettings } from "../../figures/figureSettings.ts";
import type { FigureSpec } from "../../figures/figureSpec.ts";
import { monthFigure } from "../../figures/review/monthFigure.ts";
import { monthMeasures, monthSpan } from "../../figures/review/monthMeasures.ts";
import type { ReportWith } from "../../report/report.ts";

/** The figures of a month in review; this file alone declares them. */
export interface MonthReviewFigures {
  /** Null where no measure was logged in the thirteen months. */
  readonly measures: FigureSpec | null;
}

export function monthReviewFigures(
  { runs, loads, review: { accepted } }: ReportWith<"review">,
  month: string,
  settings: FigureSettings,
): MonthReviewFigures {
  const measured = monthMeasures({ runs, loads, accepted }, monthSpan(month, settings.timeZone));
  return { measures: monthFigure(measured, month, settings) };
}
