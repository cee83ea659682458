import type { FigureSpec } from "../../figures/figureSpec.ts";
import { listed } from "../../findings/counted.ts";
import { lowerFirst } from "../../findings/sentence.ts";
import { degrees } from "../../findings/steepGermination/measureWords.ts";
import {
  growthLeftSentence,
  midwayCountsSentence,
  timetableVerdict,
} from "../../findings/steepGermination/timetableSentences.ts";
import type { GrowthModel, SteepGerminationResult } from "../../report/steepGerminationResult.ts";
import { print, printNumber, printRange, printSigned } from "../../units/print.ts";
import { shownAs } from "../../units/quantity.ts";
import { useUnits } from "../context.ts";
import { Entry } from "../Entry.tsx";
import { Figure } from "../Figure.tsx";
import { Fold } from "../Fold.tsx";
import { Said } from "../Said.tsx";
import { Scroll } from "../Scroll.tsx";

const TABLE = "timetable-table";

/** Hours to the aim for each bed temperature, and what that is against the timetable. */
function TimetableTable({ timetable }: { readonly timetable: NonNullable<GrowthModel["timetable"]> }) {
  const units = useUnits();
  const { rows, aimLength, usualHours, refused } = timetable;
  const whole = (hours: number): string => printNumber(hours, 0);
  const signed = (hours: number): string => printSigned(hours, 0);
  const long = rows.filter(({ beyondHoursCounted }) => beyondHoursCounted);
  const title = `Hours on the floor to ${print(aimLength, "fraction", units)} of the kernel; the timetable is ${print(usualHours, "hours", units, { decimals: 0 })}`;
  return (
    <div id={TABLE}>
      <Scroll label={title}>
        <table class="compact">
          <caption>{title}</caption>
          <thead>
            <tr>
              <th scope="col">{`bed, mean, ${shownAs("temperature", units).unit}`}</th>
              <th scope="col" class="n">
                {`length after ${whole(usualHours)} h`}
              </th>
              <th scope="col" class="n">
                hours to the target
              </th>
              <th scope="col" class="n">
                sooner or later
              </th>
              <th scope="col">the timetable</th>
            </tr>
          </thead>
          <tbody>
            {rows.map((row) => (
              <tr>
                <th scope="row">{print(row.celsius, "temperature", units, { bare: true })}</th>
                <td class="n">{`${print(row.lengthAtUsualHours.estimate, "fraction", units)} (${printRange(row.lengthAtUsualHours.low, row.lengthAtUsualHours.high, "fraction", units)})`}</td>
                <td class="n">{`${whole(row.hours.estimate)} (${whole(row.hours.low)} to ${whole(row.hours.high)})`}</td>
                <td class="n">
                  {`${signed(row.againstTimetableHours.estimate)} (${signed(row.againstTimetableHours.low)} to ${signed(row.againstTimetableHours.high)})`}
                </td>
                <td class="keep">{timetableVerdict(row) === "suits" ? "suits" : `ends ${timetableVerdict(row)}`}</td>
              </tr>
            ))}
          </tbody>
        </table>
      </Scroll>
      <p class="table-note">
        {refused.map(({ celsius, reason }) => `At ${degrees(celsius, units)} ${lowerFirst(reason)} `)}
        {long.length === 0
          ? null
          : `At ${listed(long.map(({ celsius }) => degrees(celsius, units)))} the hours to the target are longer than any bed was counted; its degree-hours were. `}
        In brackets 95&nbsp;% intervals. Said to end too soon or too late only where the interval keeps clear of the
        timetable. For the mean of the bed over its days on the floor; outside these temperatures no count was made on
        the way, and nothing is said.
      </p>
    </div>
  );
}

interface TimetableProps {
  readonly result: SteepGerminationResult;
  readonly figures: {
    readonly timetable: FigureSpec | null;
    readonly growth: FigureSpec | null;
    readonly lengthByTemperature: FigureSpec | null;
  };
  /** Address of the table that holds the batches' numbers. */
  readonly numbersIn: string;
}

/** How many hours sooner or later than the timetable; without counts on the way, what final length alone can say. */
export function Timetable({ result, figures, numbersIn }: TimetableProps) {
  const { growth, growthTooLittle, acrospires } = result;
  if (growth === null) {
    if (acrospires.length === 0) return null;
    return (
      <Entry id="timetable" title="The timetable and the weather">
        <div class="pair">
          {figures.lengthByTemperature === null ? null : (
            <Figure spec={figures.lengthByTemperature} numbersIn={numbersIn} />
          )}
          <div class="prose">
            {growthTooLittle === null ? null : <p>{growthTooLittle}</p>}
            <p>
              <Said sentence={midwayCountsSentence} />
            </p>
          </div>
        </div>
      </Entry>
    );
  }
  const { timetable } = growth;
  return (
    <Entry id="timetable" title="The timetable and the weather">
      <div class="pair">
        {figures.timetable === null ? null : <Figure spec={figures.timetable} numbersIn={`#${TABLE}`} />}
        {figures.growth === null ? null : <Figure spec={figures.growth} />}
      </div>
      {timetable === null ? null : (
        <>
          <TimetableTable timetable={timetable} />
          <p class="small">
            <Said sentence={growthLeftSentence(growth)} />
          </p>
        </>
      )}
      {figures.lengthByTemperature === null ? null : (
        <Fold summary="Final length against bed temperature, by the one count at unloading">
          <div class="pair">
            <Figure spec={figures.lengthByTemperature} numbersIn={numbersIn} />
            <p class="small">
              Where hours were stretched in cool weather this line is flatter than growth itself: that is why it says
              nothing of hours.
            </p>
          </div>
        </Fold>
      )}
    </Entry>
  );
}
