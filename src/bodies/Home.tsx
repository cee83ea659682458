import { pageAnswers } from "../findings/pageAnswers.ts";
import type { Sentence } from "../findings/sentence.ts";
import type { ReportWith } from "../report/report.ts";
import { useBody, useUnits } from "./context.ts";
import { Entry } from "./Entry.tsx";
import { UnderWayNow } from "./kilnHours/UnderWayNow.tsx";
import { MonthReview } from "./MonthReview.tsx";
import {
  changesPage,
  kilnHoursPage,
  logsPage,
  type PageName,
  runsPage,
  steepGerminationPage,
  thermostatPage,
  varietiesPage,
  yieldMoisturePage,
} from "./pageNames.ts";
import { RunsTable } from "./runs/RunsTable.tsx";
import { sortRuns } from "./runs/runsOrder.ts";
import { Said } from "./Said.tsx";

const LATEST = 8;

type HomeReport = ReportWith<
  "review" | "steepGermination" | "kilnHours" | "yieldMoisture" | "thermostat" | "varieties" | "changes"
>;

/** What each page answers, in its own words. */
function PageAnswers({ report }: { readonly report: HomeReport }) {
  const { house, hrefTo } = useBody();
  const units = useUnits();
  const answers = pageAnswers(report, { units, timeZone: house.timeZone });
  const pages: readonly (readonly [PageName, Sentence])[] = [
    [steepGerminationPage, answers.steepGermination],
    [kilnHoursPage, answers.kilnHours],
    [yieldMoisturePage, answers.yieldMoisture],
    [thermostatPage, answers.thermostat],
    [varietiesPage, answers.varieties],
    [changesPage, answers.changes],
    [logsPage, answers.logs],
  ];
  return (
    <ul class="front">
      {pages.map(([page, sentence]) => (
        <li>
          <a href={hrefTo(page.path)}>{page.title}</a>
          <p>
            <Said sentence={sentence} />
          </p>
        </li>
      ))}
    </ul>
  );
}

/**
 * The front page: the latest month in review, and below it, for the screen alone, what is in the kiln, what each page answers
 * and the latest batches.
 */
export function Home({ report }: { readonly report: HomeReport }) {
  const { house, hrefTo } = useBody();
  const below = (
    <div class="needs-screen">
      <UnderWayNow loads={report.kilnHours.underWay} />
      <Entry
        id="pages"
        title="Page by page"
        {...(house.invented
          ? { note: "The house, its grain and its people are invented, to show what a house’s logs can say." }
          : {})}
      >
        <PageAnswers report={report} />
      </Entry>
      {report.runs.length === 0 ? null : (
        <Entry id="latest" title="Latest batches" note={<a href={hrefTo(runsPage.path)}>All batches</a>}>
          <RunsTable rows={sortRuns(report.runs, null).slice(0, LATEST)} sort={null} />
        </Entry>
      )}
    </div>
  );
  return <MonthReview report={report} month={null} below={below} />;
}
