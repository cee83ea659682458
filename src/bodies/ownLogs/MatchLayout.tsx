import { LeftBox } from "../LeftBox.tsx";
import type { ForeignHands, MatchState } from "./foreignState.ts";

interface MatchLayoutProps {
  readonly matching: MatchState;
  readonly hands: ForeignHands;
}

const ORDERS = [
  ["dmy", "day, month, year"],
  ["mdy", "month, day, year"],
  ["ymd", "year, month, day"],
] as const;

const MARKS = [
  [".", "a point, 17.2"],
  [",", "a comma, 17,2"],
  ["", "as the numbers show"],
] as const;

function Dates({ matching: { dates }, hands }: MatchLayoutProps) {
  if (dates === null) return null;
  const { order, shortYears, doubt } = dates;
  return (
    <>
      <div class="field">
        <label for="match-dates">Dates are written</label>
        <select
          id="match-dates"
          value={order}
          aria-describedby={doubt === null ? undefined : "match-dates-doubt"}
          onChange={({ currentTarget }) => hands.dates(currentTarget.value)}
        >
          {ORDERS.map(([key, label]) => (
            <option value={key} selected={key === order}>
              {label}
            </option>
          ))}
        </select>
      </div>
      <label class="tick">
        <input
          type="checkbox"
          checked={shortYears}
          onChange={({ currentTarget }) => hands.shortYears(currentTarget.checked)}
        />
        years have two digits
      </label>
    </>
  );
}

/** Where the headings stand, and how dates and numbers are written. */
export function MatchLayout({ matching, hands }: MatchLayoutProps) {
  const { layout, decimal, dates } = matching;
  const { said, delimiter, delimiters, headingsLine, linesUnder } = layout;
  const known = delimiters.some(({ key }) => key === delimiter);
  const lines = (value: string, least: number, otherwise: number): number => {
    const line = Number(value);
    return Number.isInteger(line) && line >= least ? line : otherwise;
  };
  return (
    <>
      <div class="choose-fields">
        <Dates matching={matching} hands={hands} />
        <div class="field">
          <label for="match-decimal">Decimal sign</label>
          <select
            id="match-decimal"
            value={decimal}
            onChange={({ currentTarget }) => hands.decimal(currentTarget.value)}
          >
            {MARKS.map(([key, label]) => (
              <option value={key} selected={key === decimal}>
                {label}
              </option>
            ))}
          </select>
        </div>
      </div>
      {dates === null || dates.doubt === null ? null : (
        <p class="match-doubt" id="match-dates-doubt">
          {dates.doubt}
        </p>
      )}
      <details class="fold">
        <summary>{said}</summary>
        <p class="small">Changing any of this begins the suggestion anew.</p>
        <div class="choose-fields">
          <div class="field">
            <label for="match-line">Headings in line</label>
            <LeftBox
              id="match-line"
              type="number"
              min="1"
              max="1000"
              value={headingsLine}
              taken={(line) => hands.layOut(delimiter, lines(line, 1, headingsLine), linesUnder)}
            />
          </div>
          <div class="field">
            <label for="match-under">Lines under it before the first row</label>
            <LeftBox
              id="match-under"
              type="number"
              min="0"
              max="1000"
              value={linesUnder}
              taken={(under) => hands.layOut(delimiter, headingsLine, lines(under, 0, linesUnder))}
            />
          </div>
          <div class="field">
            <label for="match-delimiter">Between the columns</label>
            <select
              id="match-delimiter"
              value={delimiter}
              onChange={({ currentTarget }) => hands.layOut(currentTarget.value, headingsLine, linesUnder)}
            >
              {[...delimiters, ...(known ? [] : [{ key: delimiter, label: delimiter }])].map(({ key, label }) => (
                <option value={key} selected={key === delimiter}>
                  {label}
                </option>
              ))}
            </select>
          </div>
        </div>
      </details>
    </>
  );
}
