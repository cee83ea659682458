import { coverageByMonth } from "../../figures/coverageByMonth.ts";
import type { FigureSpec } from "../../figures/figureSpec.ts";
import type { LogsResult } from "../../report/logsResult.ts";

/** Every figure of the Logs page. Nothing else declares a figure of it. */
export function logsFigures(logs: LogsResult): readonly FigureSpec[] {
  return [coverageByMonth(logs)].filter((spec) => spec !== null);
}
