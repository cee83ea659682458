import type { ReviewResult } from "../../report/reviewResult.ts";
import { monthPath } from "../../units/calendarMonth.ts";
import { printMonth } from "../../units/instant.ts";
import { useBody } from "../context.ts";
import { Entry } from "../Entry.tsx";
import { homePage } from "../pageNames.ts";

type There = Pick<ReviewResult, "monthsThereAre">;

/** The latest month is the front page; every month has an address of its own. */
const pathOf = (month: string, { monthsThereAre }: There): string =>
  month === monthsThereAre[0] ? homePage.path : monthPath(month);

interface BesideMonthsProps {
  readonly result: There;
  readonly month: string;
}

/** The months before and after. */
export function BesideMonths({ result, month }: BesideMonthsProps) {
  const { hrefTo } = useBody();
  const at = result.monthsThereAre.indexOf(month);
  const [before, after] = [result.monthsThereAre[at + 1], result.monthsThereAre[at - 1]];
  if (before === undefined && after === undefined) return null;
  const link = (name: string, text: string) => <a href={hrefTo(pathOf(name, result))}>{text}</a>;
  return (
    <nav class="beside" aria-label="Other months">
      {before === undefined ? <span /> : link(before, `← ${printMonth(before)}`)}
      {after === undefined ? null : link(after, `${printMonth(after)} →`)}
    </nav>
  );
}

/** A link to every month, a line a year. */
export function AllMonths({ result, month }: BesideMonthsProps) {
  const { hrefTo } = useBody();
  const { monthsThereAre } = result;
  if (monthsThereAre.length < 2) return null;
  const years = [...new Set(monthsThereAre.map((name) => name.slice(0, 4)))];
  return (
    <div class="needs-screen">
      <Entry id="all-months" title="All months">
        <ul class="lines">
          {years.map((year) => (
            <li class="months">
              <b>{year}</b>
              {monthsThereAre
                .filter((name) => name.startsWith(year))
                .toReversed()
                .map((name) => (
                  <a href={hrefTo(pathOf(name, result))} {...(name === month ? { "aria-current": "page" } : {})}>
                    {printMonth(name).slice(0, -5)}
                  </a>
                ))}
            </li>
          ))}
        </ul>
      </Entry>
    </div>
  );
}
