import { counted } from "../findings/counted.ts";
import { runsAnswer } from "../findings/runsAnswer.ts";
import type { ReportRows } from "../report/report.ts";
import { Answer } from "./Answer.tsx";
import { SteepCautions } from "./Cautions.tsx";
import { useBody } from "./context.ts";
import { FilterBar } from "./FilterBar.tsx";
import { runsPage } from "./pageNames.ts";
import { RunsTable } from "./runs/RunsTable.tsx";
import { readSort, searchRuns, sortRuns } from "./runs/runsOrder.ts";

/** A page shows no more rows than this; a search brings the others up. */
const MOST = 200;

/** What happened to batch X: the way in to every batch. */
export function Runs({ report }: { readonly report: ReportRows }) {
  const { house, view, hrefTo } = useBody();
  const sort = readSort(view.sort);
  const found = sortRuns(searchRuns(report.runs, view.search), sort);
  const shown = found.slice(0, MOST);
  return (
    <>
      <Answer page={runsPage.title} stage="none" answer={runsAnswer(report.runs, house.timeZone)} grounds={[]} />
      <FilterBar report={report} page={runsPage.path} />
      <search class="needs-scripting">
        <form method="get" action={hrefTo(runsPage.path)} class="find" data-form="search">
          <div class="field">
            <label for="search-runs">Find a batch: number, variety, lot, grower, note</label>
            <input id="search-runs" type="search" name="search" data-control="search" value={view.search ?? ""} />
          </div>
        </form>
      </search>
      <div class="runs-frame">
        {shown.length === 0 ? (
          <p>{report.runs.length === 0 ? "There is nothing to list yet." : "No batch fits that."}</p>
        ) : (
          <RunsTable rows={shown} sort={sort} />
        )}
        {found.length > MOST ? (
          <p class="table-note">
            {`${MOST} of ${counted(found.length, "batch", "batches")} shown. `}
            <span class="needs-scripting">Search, or choose dates, for the others.</span>
          </p>
        ) : null}
      </div>
      <SteepCautions />
    </>
  );
}
