import { changesAnswer } from "../findings/changes/changesAnswer.ts";
import { kilnHoursAnswer } from "../findings/kilnHoursAnswer.ts";
import { logsAnswer } from "../findings/logsAnswer.ts";
import { runsAnswer } from "../findings/runsAnswer.ts";
import type { Sentence } from "../findings/sentence.ts";
import { steepGerminationAnswer } from "../findings/steepGermination/steepGerminationAnswer.ts";
import { thermostatAnswer } from "../findings/thermostatAnswer.ts";
import { varietiesAnswer } from "../findings/varieties/varietiesAnswer.ts";
import { yieldMoistureAnswer } from "../findings/yieldMoistureAnswer.ts";
import type { ReportWith } from "../report/report.ts";
import { Answer } from "./Answer.tsx";
import { useBody, useUnits } from "./context.ts";
import { Entry } from "./Entry.tsx";
import { UnderWayNow } from "./kilnHours/UnderWayNow.tsx";
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
import { Said } from "./Said.tsx";

const LATEST = 8;

/** The front page: what is in the kiln, what each page answers in its own words, and the latest batches. */
export function Home({
  report,
}: {
  readonly report: ReportWith<
    "steepGermination" | "kilnHours" | "yieldMoisture" | "thermostat" | "varieties" | "changes"
  >;
}) {
  const { house, hrefTo } = useBody();
  const units = useUnits();
  const pages: readonly (readonly [PageName, Sentence])[] = [
    [steepGerminationPage, steepGerminationAnswer(report.steepGermination, units)],
    [kilnHoursPage, kilnHoursAnswer(report.kilnHours, units)],
    [yieldMoisturePage, yieldMoistureAnswer(report.yieldMoisture, house.timeZone)],
    [thermostatPage, thermostatAnswer(report.thermostat, { units, timeZone: house.timeZone })],
    [varietiesPage, varietiesAnswer(report.varieties)],
    [changesPage, changesAnswer(report.changes, { units, timeZone: house.timeZone })],
    [logsPage, logsAnswer(report.logs, report.runs.length)],
  ];
  return (
    <>
      <Answer
        page="From steep to malt"
        stage="none"
        answer={runsAnswer(report.runs, house.timeZone)}
        grounds={[
          house.invented
            ? ["The house, its grain and its people are invented, to show what a house’s logs can say."]
            : [],
        ]}
      />
      <UnderWayNow loads={report.kilnHours.underWay} />
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
      {report.runs.length === 0 ? null : (
        <Entry id="latest" title="Latest batches" note={<a href={hrefTo(runsPage.path)}>All batches</a>}>
          <RunsTable rows={report.runs.slice(0, LATEST)} sort={null} />
        </Entry>
      )}
    </>
  );
}
