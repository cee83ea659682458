import { partSums, totalLines, yieldLine } from "../../findings/review/totalsLine.ts";
import { joinSentences } from "../../findings/sentence.ts";
import type { MonthReview } from "../../report/reviewResult.ts";
import { printMonth, printShortMonth } from "../../units/instant.ts";
import { useUnits } from "../context.ts";
import { Entry } from "../Entry.tsx";
import { Said } from "../Said.tsx";
import { Scroll } from "../Scroll.tsx";

/** What the month came to, beside the month before and the same month a year before. */
export function TotalsTable({ review }: { readonly review: MonthReview }) {
  const units = useUnits();
  const { totals, lastMonth, sameMonthLastYear } = review;
  const lines = totalLines(review, units);
  const note = joinSentences([yieldLine(review), partSums(review)]);
  const title = `${printMonth(totals.month)} in figures`;
  const cell = (text: string) => <td class="n">{text === "" ? "–" : text}</td>;
  return (
    <Entry id="figures" title="In figures">
      <Scroll label={title}>
        <table class="compact totals">
          <caption class="visually-hidden">{title}</caption>
          <thead>
            <tr>
              <th scope="col" />
              <th scope="col" class="n">
                {printShortMonth(totals.month)}
              </th>
              {lastMonth === null ? null : (
                <>
                  <th scope="col" class="n">
                    {printShortMonth(lastMonth.month)}
                  </th>
                  <th scope="col" class="n quiet">
                    change
                  </th>
                </>
              )}
              {sameMonthLastYear === null ? null : (
                <>
                  <th scope="col" class="n">
                    {printShortMonth(sameMonthLastYear.month)}
                  </th>
                  <th scope="col" class="n quiet">
                    change
                  </th>
                </>
              )}
            </tr>
          </thead>
          <tbody>
            {lines.map((line) => (
              <tr>
                <th scope="row">{line.name}</th>
                <td class="n">
                  <b>{line.now === "" ? "–" : line.now}</b>
                </td>
                {lastMonth === null ? null : (
                  <>
                    {cell(line.lastMonth)}
                    {cell(line.onLastMonth)}
                  </>
                )}
                {sameMonthLastYear === null ? null : (
                  <>
                    {cell(line.lastYear)}
                    {cell(line.onLastYear)}
                  </>
                )}
              </tr>
            ))}
          </tbody>
        </table>
      </Scroll>
      {note.length === 0 ? null : (
        <p class="table-note">
          <Said sentence={note} />
        </p>
      )}
    </Entry>
  );
}
