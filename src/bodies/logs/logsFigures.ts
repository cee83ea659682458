import type { FigureSettings } from "../../figures/figureSettings.ts";
import type { FigureSpec } from "../../figures/figureSpec.ts";
import type { LogsResult } from "../../report/logsResult.ts";

/** Every figure of the Logs page. Nothing else declares a figure of it. */
export function logsFigures(_logs: LogsResult, _settings: FigureSettings): readonly FigureSpec[] {
  return [];
}
