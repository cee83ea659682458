import { allRules } from "../analysis/controlCharts/ruleChoice.ts";
import type { PartName } from "../report/report.ts";
import { usualRules, type View } from "../report/view.ts";
import { changeView } from "./changeView.ts";
import type { LoadedReport } from "./loadedReport.ts";

/** Pages that are worked out in some milliseconds: guessing at others would keep a real question waiting. */
const LIGHT: readonly (PartName | undefined)[] = ["steepGermination", "kilnHours", "yieldMoisture"];

/** Up and down a list, which a reader steps through by its keys. */
const MOST_STEPS = 2;

/** The choices of a list nearest to the one made, next before last; the list goes round. */
function stepsFrom(list: readonly string[], made: string | null): readonly string[] {
  const all = ["", ...list];
  const here = Math.max(0, all.indexOf(made ?? ""));
  const steps = Array.from({ length: MOST_STEPS }, (_, i) => [i + 1, -(i + 1)]).flat();
  const found = steps.flatMap((step) => all.at((here + step) % all.length) ?? []);
  return [...new Set(found)].filter((choice) => choice !== all[here]);
}

/**
 * What a reader is likely to choose next on a page with these parts, likeliest first: another variety or kiln, another
 * rule for the charts, the other air, the latest batch left out. None where guessing would cost more than it saves.
 *
 * @param report of the view that is shown
 */
export function likelyViews(view: View, report: LoadedReport, parts: readonly PartName[]): readonly View[] {
  if (parts.length !== 1 || !LIGHT.includes(parts[0])) return [];
  const after = (name: string, value: string, checked = true): View => changeView(view, { name, value, checked });
  const { varieties, kilns } = report.choices;
  // Who has chosen rules of their own is not followed through all that can be made of them.
  const rules = parts.includes("yieldMoisture") && view.rules === null ? allRules : [];
  const { airBasis, loadsByAir } = report.kilnHours ?? {};
  const latest = report.runs[0]?.run;
  return [
    ...stepsFrom(varieties, view.variety).map((variety) => after("variety", variety)),
    ...rules.map((rule) => after("rules", rule, !usualRules.includes(rule))),
    ...(kilns.length > 1 ? stepsFrom(kilns, view.kiln).map((kiln) => after("kiln", kiln)) : []),
    ...(loadsByAir !== undefined && loadsByAir.mean > 0 && loadsByAir.at_loading > 0
      ? [after("air", airBasis === "mean" ? "at_loading" : "mean")]
      : []),
    ...(latest === undefined ? [] : [after("without", latest)]),
  ];
}
