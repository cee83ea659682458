import { kilnHoursAnswer } from "../findings/kilnHoursAnswer.ts";
import { logsAnswer } from "../findings/logsAnswer.ts";
import { runsAnswer } from "../findings/runsAnswer.ts";
import type { Sentence } from "../findings/sentence.ts";
import type { Report } from "../report/report.ts";
import { useBody, useUnits } from "./context.ts";
import { Entry } from "./Entry.tsx";
import { UnderWayNow } from "./kilnHours/UnderWayNow.tsx";
import { kilnHoursPage, logsPage, type PageName, runsPage } from "./pageNames.ts";
import { RunsTable } from "./runs/RunsTable.tsx";
import { Said } from "./Said.tsx";

const LATEST = 8;

/** The front page: what each page answers, in its own words, and the latest batches. */
export function Home({ report }: { readonly report: Report }) {
  const { house, hrefTo } = useBody();
  const units = useUnits();
  const pages: readonly (readonly [PageName, Sentence])[] = [
    [kilnHoursPage, kilnHoursAnswer(report.kilnHours, units)],
    [runsPage, runsAnswer(report.runs, house.timeZone)],
    [logsPage, logsAnswer(report.logs, report.runs.length)],
  ];
  return (
    <>
      <h1>{house.name}</h1>
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
      <UnderWayNow loads={report.kilnHours.underWay} />
      {report.runs.length === 0 ? null : (
        <Entry id="latest" title="Latest batches">
          <RunsTable rows={report.runs.slice(0, LATEST)} sort={null} />
        </Entry>
      )}
    </>
  );
}
