import type { AskQuestion } from "../report/ask/askQuestions.ts";
import type { AskTable } from "../report/ask/askSchema.ts";
import { Answer } from "./Answer.tsx";
import { AskAnswer } from "./ask/AskAnswer.tsx";
import { AskForm } from "./ask/AskForm.tsx";
import { AskSchema } from "./ask/AskSchema.tsx";
import type { AskHands, AskState } from "./ask/askState.ts";
import { Entry } from "./Entry.tsx";
import { askLogsPage } from "./pageNames.ts";

interface AskLogsProps {
  readonly questions: readonly AskQuestion[];
  readonly tables: readonly AskTable[];
  readonly state: AskState;
  readonly hands: AskHands | null;
}

/** Whatever no page answers: a question in SQL over the logs and what the joins make of them. */
export function AskLogs({ questions, tables, state, hands }: AskLogsProps) {
  return (
    <div class="ask" data-wakes>
      <Answer
        page={askLogsPage.title}
        stage="none"
        answer={["Ask the logs what no page answers, in SQL."]}
        grounds={[
          [
            "The engine in this browser reads the tables and cannot change them; nothing leaves the computer. Masses are in kg, temperatures in °C, depths in m, times in UTC: house_time(t) puts a time on the house’s clock.",
          ],
        ]}
      />
      <p class="without-scripting refusal">
        Questions are answered by JavaScript, which is off here. The questions and the tables can be read all the same.
      </p>
      <Entry id="question" title="Question" class="needs-scripting needs-screen">
        <AskForm state={state} hands={hands} />
      </Entry>
      <AskAnswer stage={state.stage} hands={hands} />
      <Entry
        id="worked"
        title="Worked questions"
        class="needs-screen"
        note={<span class="needs-scripting">Each is asked as it stands, and can be altered afterwards.</span>}
      >
        <ul class="ask-questions">
          {questions.map(({ title, sql }) => (
            <li>
              <button
                type="button"
                class="button button-quiet needs-scripting"
                disabled={hands === null || state.stage.kind === "asking"}
                onClick={() => hands?.ask(sql)}
              >
                {title}
              </button>
              <details class="fold without-scripting">
                <summary>{title}</summary>
                <pre>{sql}</pre>
              </details>
            </li>
          ))}
        </ul>
      </Entry>
      <Entry id="tables" title="Tables" note="Begin with run_rows or load_rows: there everything is joined.">
        <AskSchema tables={tables} />
      </Entry>
    </div>
  );
}
