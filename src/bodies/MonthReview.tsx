import type { ComponentChildren } from "preact";
import { useMemo } from "preact/hooks";
import { lookedAtSentence, monthAnswer } from "../findings/review/monthAnswer.ts";
import { ordersEyeSentence } from "../findings/review/ordersEye.ts";
import type { ReportWith } from "../report/report.ts";
import type { MonthReview as Review } from "../report/reviewResult.ts";
import { printDateInFull, printMonth } from "../units/instant.ts";
import { Answer } from "./Answer.tsx";
import { useBody, useFigureSettings } from "./context.ts";
import { Entry } from "./Entry.tsx";
import { Figure } from "./Figure.tsx";
import { homePage } from "./pageNames.ts";
import { MonthEvents, OpenQuestions, RestsOn } from "./review/BesideFindings.tsx";
import { FindingsList } from "./review/FindingsList.tsx";
import { AllMonths, BesideMonths } from "./review/Months.tsx";
import { monthReviewFigures } from "./review/monthReviewFigures.ts";
import { Promised } from "./review/Promised.tsx";
import { TotalsTable } from "./review/TotalsTable.tsx";
import { UnitsChoice } from "./review/UnitsChoice.tsx";
import { useReviewReader } from "./review/useReviewReader.ts";
import { Said } from "./Said.tsx";

interface MonthReviewProps {
  readonly report: ReportWith<"review">;
  /** `2026-10`; null: the latest. */
  readonly month: string | null;
  /** What stands between the month and the list of all months. */
  readonly below?: ComponentChildren;
}

/** The month that a page shows; undefined where the logs hold no such month. */
export const shownMonth = ({ review }: ReportWith<"review">, month: string | null): Review | undefined =>
  month === null ? review.months[0] : review.months.find(({ totals }) => totals.month === month);

interface BinderProps {
  readonly report: ReportWith<"review">;
  readonly month: string;
  readonly sheet: 1 | 2;
}

/** On paper: whose sheet, of which month, made of what; so that it can be told in a binder. */
function Binder({ report: { lastLoggedAt }, month, sheet }: BinderProps) {
  const { house } = useBody();
  const whose = house.invented ? `${house.name}, an invented house` : house.name;
  return (
    <p class={sheet === 1 ? "binder print-only" : "binder print-only second-sheet"}>
      <b>{whose}</b>
      <span>{`${printMonth(month)} in review`}</span>
      <span>{lastLoggedAt === null ? "" : `made of run logs to ${printDateInFull(lastLoggedAt, house.timeZone)}`}</span>
    </p>
  );
}

interface MonthProps extends Pick<MonthReviewProps, "report" | "below"> {
  readonly review: Review;
}

function Month({ report, review, below }: MonthProps) {
  const settings = useFigureSettings();
  const reader = useReviewReader(report.review);
  const { month } = review.totals;
  const { measures } = useMemo(() => monthReviewFigures(report, month, settings), [report, month, settings]);
  const { promised } = review;
  const eye = ordersEyeSentence(review);
  return (
    <>
      <Binder report={report} month={month} sheet={1} />
      <Answer
        page={`${homePage.title}, ${printMonth(month)}`}
        stage="none"
        answer={monthAnswer(review, reader)}
        grounds={[review.findings.length === 0 ? lookedAtSentence(review) : []]}
      >
        {eye.length === 0 ? null : (
          <p class="lede">
            <Said sentence={eye} /> <a href="#promised">Promised against made</a>
          </p>
        )}
      </Answer>
      <BesideMonths result={report.review} month={month} />
      <UnitsChoice />
      <TotalsTable review={review} />
      <FindingsList review={review} reader={reader} />
      <Binder report={report} month={month} sheet={2} />
      <OpenQuestions review={review} reader={reader} />
      {measures === null ? null : (
        <Entry id="measures" title="Beside the year before">
          <Figure spec={measures} />
        </Entry>
      )}
      {promised === null ? null : <Promised promised={promised} reader={reader} />}
      <MonthEvents review={review} reader={reader} />
      <RestsOn review={review} />
      {below}
      <AllMonths result={report.review} month={month} />
    </>
  );
}

/** What a month came to, what to look at first, and whether what was promised is made: two sheets of paper. */
export function MonthReview({ report, month, below }: MonthReviewProps) {
  const review = shownMonth(report, month);
  if (review !== undefined) return <Month report={report} review={review} below={below} />;
  const { tooLittle } = report.review;
  return (
    <>
      <Answer page={homePage.title} stage="none" answer={[tooLittle ?? "The logs hold no such month."]} grounds={[]} />
      {below}
    </>
  );
}
