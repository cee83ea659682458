import type { FigureSpec } from "../../figures/figureSpec.ts";
import {
  lengthOnTemperatureSentence,
  midwayCountsSentence,
  timetableBatchesSentence,
  timetableVerdict,
} from "../../findings/steepGermination/timetableSentences.ts";
import type { GrowthModel, SteepGerminationResult } from "../../report/steepGerminationResult.ts";
import { print, printNumber, printSigned } from "../../units/print.ts";
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
  const { rows, aimLength, usualHours } = timetable;
  const whole = (hours: number): string => printNumber(hours, 0);
  const signed = (hours: number): string => printSigned(hours, 0);
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
                hours to the aim
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
                <td class="n">{`${whole(row.hours.estimate)} (${whole(row.hours.low)} to ${whole(row.hours.high)})`}</td>
                <td class="n">
                  {`${signed(row.againstTimetableHours.estimate)} (${signed(row.againstTimetableHours.low)} to ${signed(row.againstTimetableHours.high)})`}
                </td>
                <td>{timetableVerdict(row) === "suits" ? "suits" : `ends ${timetableVerdict(row)}`}</td>
              </tr>
            ))}
          </tbody>
        </table>
      </Scroll>
      <p class="table-note">
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
}

/** How many hours sooner or later than the timetable; without counts on the way, what final length alone can say. */
export function Timetable({ result, figures }: TimetableProps) {
  const units = useUnits();
  const { growth, growthTooLittle, lengthOnTemperature, acrospires } = result;
  const byTemperature =
    figures.lengthByTemperature === null ? null : (
      <div class="pair">
        <Figure spec={figures.lengthByTemperature} />
      </div>
    );
  if (growth === null) {
    if (acrospires.length === 0) return null;
    return (
      <Entry id="timetable" title="The timetable and the weather">
        {byTemperature}
        {growthTooLittle === null ? null : <p>{growthTooLittle}</p>}
        <p>
          <Said sentence={midwayCountsSentence} />
        </p>
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
          <p>
            <Said sentence={timetableBatchesSentence(timetable, acrospires, growth.coversCelsius, units)} />
          </p>
        </>
      )}
      {lengthOnTemperature === null || byTemperature === null ? null : (
        <Fold summary="Final length against bed temperature, by the one count at unloading">
          {byTemperature}
          <p class="small">
            <Said sentence={lengthOnTemperatureSentence(lengthOnTemperature, units)} /> Where hours were stretched in
            cool weather this line is flatter than growth itself.
          </p>
        </Fold>
      )}
    </Entry>
  );
}
