import { countedInWords } from "../findings/counted.ts";
import type { AirBasis } from "../report/airBasis.ts";
import type { KilnHoursResult } from "../report/kilnHoursResult.ts";
import type { ReportRows } from "../report/report.ts";
import { useBody, useUnits } from "./context.ts";
import { withoutQuery } from "./withQuery.ts";

const AIR: Readonly<Record<AirBasis, string>> = { at_loading: "at loading", mean: "mean over the load" };

interface FilterBarProps {
  readonly report: ReportRows;
  /** The page's path from the site's root. */
  readonly page: string;
  /** The air that the page's numbers rest on, and what else there is; without it no choice is offered. */
  readonly air?: Pick<KilnHoursResult, "airBasis" | "loadsByAir">;
}

/** What the reader sees now, in words: `All loads, metric units`. */
function choiceInWords(report: ReportRows, view: ReturnType<typeof useBody>["view"]): string {
  const parts = [
    view.from === null ? null : `from ${view.from}`,
    view.to === null ? null : `to ${view.to}`,
    view.variety,
    view.kiln === null ? null : `kiln ${view.kiln}`,
    view.without.length === 0 ? null : `without ${view.without.join(", ")}`,
  ].filter((part) => part !== null);
  if (parts.length === 0) return "All that is logged";
  return `${countedInWords(report.runs.length, "batch", "batches")}: ${parts.join(", ")}`;
}

/** The reader's choices: dates, variety, kiln, batches left out, air and units. Hidden where scripting is off. */
export function FilterBar({ report, page, air }: FilterBarProps) {
  const { view, hrefTo } = useBody();
  const units = useUnits();
  const { varieties, kilns, firstDate, lastDate } = report.choices;
  const bounds = { min: firstDate ?? undefined, max: lastDate ?? undefined };
  return (
    <div class="choose needs-scripting">
      <details>
        <summary>
          {choiceInWords(report, view)}. <span class="as-link">Choose dates, variety, units</span>
        </summary>
        <form method="get" action={hrefTo(page)} class="choose-fields" data-form="view">
          <div class="field">
            <label for="choose-from">Loaded from</label>
            <input id="choose-from" type="date" name="from" data-control="from" value={view.from ?? ""} {...bounds} />
          </div>
          <div class="field">
            <label for="choose-to">Loaded to</label>
            <input id="choose-to" type="date" name="to" data-control="to" value={view.to ?? ""} {...bounds} />
          </div>
          <div class="field">
            <label for="choose-variety">Variety</label>
            <select id="choose-variety" name="variety" data-control="variety" value={view.variety ?? ""}>
              <option value="">every variety</option>
              {varieties.map((variety) => (
                <option value={variety}>{variety}</option>
              ))}
            </select>
          </div>
          {kilns.length > 1 ? (
            <div class="field">
              <label for="choose-kiln">Kiln</label>
              <select id="choose-kiln" name="kiln" data-control="kiln" value={view.kiln ?? ""}>
                <option value="">every kiln</option>
                {kilns.map((kiln) => (
                  <option value={kiln}>{kiln}</option>
                ))}
              </select>
            </div>
          ) : null}
          {air !== undefined && air.loadsByAir.at_loading > 0 && air.loadsByAir.mean > 0 ? (
            <div class="field">
              <label for="choose-air">Air</label>
              <select id="choose-air" name="air" data-control="air" value={air.airBasis}>
                {(["at_loading", "mean"] as const).map((basis) => (
                  <option value={basis}>{`${AIR[basis]} (${air.loadsByAir[basis]})`}</option>
                ))}
              </select>
            </div>
          ) : null}
          <div class="field">
            <label for="choose-units">Units</label>
            <select id="choose-units" name="units" data-control="units" value={units}>
              <option value="metric">metric</option>
              <option value="us">US customary</option>
            </select>
          </div>
          {view.without.length > 0 ? (
            <fieldset class="choose-without">
              <legend class="small">Left out; untick to put back</legend>
              {view.without.map((run) => (
                <label class="tick">
                  <input type="checkbox" name="without" value={run} data-control="without" checked /> {run}
                </label>
              ))}
            </fieldset>
          ) : null}
          <a class="choose-everything" href={withoutQuery(hrefTo(page))}>
            Start over
          </a>
        </form>
      </details>
      <p class="progress">
        <output data-slot="progress" />{" "}
        <button type="button" class="button button-quiet" data-action="cancel" hidden>
          Cancel
        </button>
      </p>
    </div>
  );
}
