import { counted } from "../findings/counted.ts";
import { logsAnswer } from "../findings/logsAnswer.ts";
import { chooseOwnLogs, staysHere } from "../findings/ownLogsSentences.ts";
import type { ReportRows } from "../report/report.ts";
import { Answer } from "./Answer.tsx";
import { Entry } from "./Entry.tsx";
import { Fold } from "./Fold.tsx";
import { FilesRead } from "./logs/FilesRead.tsx";
import { Problems } from "./logs/Problems.tsx";
import { ChooseLogs } from "./ownLogs/ChooseLogs.tsx";
import { ForeignFiles } from "./ownLogs/ForeignFiles.tsx";
import type { OwnLogsState } from "./ownLogs/ownLogsState.ts";
import { ReadLogs } from "./ownLogs/ReadLogs.tsx";
import { ShownLogs } from "./ownLogs/ShownLogs.tsx";
import { yourLogsPage } from "./pageNames.ts";

interface YourLogsProps {
  /** The rows of the reader's own logs where those are shown, else the site's. */
  readonly report: ReportRows;
  readonly own: OwnLogsState;
}

/** A reader brings their own logs: what was chosen, what came of reading it, and the way back. */
export function YourLogs({ report: { house, logs, runs }, own }: YourLogsProps) {
  const shown = own.stage === "shown";
  return (
    <>
      <Answer
        page={yourLogsPage.title}
        stage="none"
        answer={shown ? logsAnswer(logs, runs.length) : chooseOwnLogs}
        grounds={[staysHere]}
      />
      <p class="without-scripting refusal">
        The browser reads the files by JavaScript, which is off here. Without it, the command npm run check-logs checks
        a folder of logs, and npm start makes the site from it.
      </p>
      {shown ? <ShownLogs house={house.name} problems={logs.problems.length} own={own} /> : null}
      {shown ? <Problems problems={logs.problems} /> : null}
      {shown ? (
        <Entry id="files" title="What was read">
          <Fold summary={counted(logs.files.length, "file")}>
            <FilesRead files={logs.files} />
          </Fold>
        </Entry>
      ) : null}
      <ChooseLogs own={own} />
      {own.foreign === null ? null : <ForeignFiles foreign={own.foreign} />}
      <ReadLogs own={own} />
    </>
  );
}
