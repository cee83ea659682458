import { askedTable } from "../../figures/ask/askedCells.ts";
import { counted } from "../../findings/counted.ts";
import { printNumber } from "../../units/print.ts";
import { DataTableView } from "../DataTableView.tsx";
import { Entry } from "../Entry.tsx";
import { Figure } from "../Figure.tsx";
import type { AskHands, AskStage } from "./askState.ts";

/** The answer to a question, or why there is none. */
export function AskAnswer({ stage, hands }: { readonly stage: AskStage; readonly hands: AskHands | null }) {
  if (stage.kind === "failed") {
    const { sentence, engine } = stage.fault;
    return (
      <Entry id="answer" title="Not answered">
        <p class="refusal" role="alert">
          {sentence}
        </p>
        {engine === null ? null : <pre class="ask-engine">{engine}</pre>}
      </Entry>
    );
  }
  if (stage.kind !== "answered") return null;
  const { answer, figure, seconds } = stage;
  const rows = counted(answer.rows.length, "row");
  const took = seconds < 0.1 ? "under 0.1\u00a0s" : `${printNumber(seconds, 1)}\u00a0s`;
  return (
    <Entry id="answer" title="Answer" note={`${answer.more ? `The first ${rows}` : rows}, in ${took}.`}>
      {figure === null ? null : <Figure spec={figure} numbersIn="#asked-rows" />}
      <div id="asked-rows">
        {answer.rows.length === 0 ? (
          <p role="status">No row answers to this question.</p>
        ) : (
          <DataTableView table={askedTable(answer)} caption="Rows of the answer" />
        )}
      </div>
      {answer.rows.length === 0 ? null : (
        <p>
          <button type="button" class="button" onClick={() => hands?.download()}>
            {`Save ${rows} as CSV`}
          </button>
        </p>
      )}
    </Entry>
  );
}
