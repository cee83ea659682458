import { changeEffects } from "../../figures/changes/changeEffects.ts";
import { changeInTime } from "../../figures/changes/changeInTime.ts";
import type { FigureSettings } from "../../figures/figureSettings.ts";
import type { FigureSpec } from "../../figures/figureSpec.ts";
import type { ChangesResult } from "../../report/changesResult.ts";

/** The figures that follow the rows shown; this file alone declares the page's figures. */
export interface ChangesFigures {
  /** What each change came to; null where nothing was compared. */
  readonly effects: FigureSpec | null;
  /** By the change's id. */
  readonly inTime: ReadonlyMap<string, FigureSpec>;
}

export function changesFigures({ changes }: ChangesResult, settings: FigureSettings): ChangesFigures {
  const inTime = new Map<string, FigureSpec>();
  for (const change of changes) {
    const spec = changeInTime(change, change.beside, settings);
    if (spec !== null) inTime.set(change.id, spec);
  }
  return { effects: changeEffects(changes, settings), inTime };
}
