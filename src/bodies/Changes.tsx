import { useMemo } from "preact/hooks";
import { changesAnswer, changesGrounds } from "../findings/changes/changesAnswer.ts";
import type { ReportWith } from "../report/report.ts";
import type { TrialAnswer } from "../report/trialAnswer.ts";
import { Answer } from "./Answer.tsx";
import { ChangeEntry } from "./changes/ChangeEntry.tsx";
import { ChangesWorkedOut } from "./changes/ChangesWorkedOut.tsx";
import { changesFigures } from "./changes/changesFigures.ts";
import { NextTrial } from "./changes/NextTrial.tsx";
import { useBody, useFigureSettings, useUnits } from "./context.ts";
import { Entry } from "./Entry.tsx";
import { Figure } from "./Figure.tsx";
import { FilterBar } from "./FilterBar.tsx";
import { changesPage } from "./pageNames.ts";

export interface ChangesProps {
  readonly report: ReportWith<"changes">;
  /** Runs needed for the trial that the reader asks about; null where no spread is known. */
  readonly trial: TrialAnswer | null;
}

/** We changed something: did it help? */
export function Changes({ report, trial }: ChangesProps) {
  const { house } = useBody();
  const units = useUnits();
  const settings = useFigureSettings();
  const { changes } = report;
  const figures = useMemo(() => changesFigures(changes, settings), [changes, settings]);
  const reader = { units, timeZone: house.timeZone };
  return (
    <>
      <Answer
        page={changesPage.title}
        stage="none"
        answer={changesAnswer(changes, reader)}
        grounds={changesGrounds(changes, reader)}
      />
      <FilterBar report={report} page={changesPage.path} />
      {figures.effects === null || changes.changes.length < 2 ? null : (
        <Entry id="all-changes" title="All changes" note="Left of the line less, right of it more, than before.">
          <Figure spec={figures.effects} />
        </Entry>
      )}
      {changes.changes.map((change) => (
        <ChangeEntry change={change} figure={figures.inTime.get(change.id) ?? null} />
      ))}
      <NextTrial plans={changes.plans} answer={trial} />
      {changes.changes.length === 0 ? null : <ChangesWorkedOut />}
    </>
  );
}
