import { askedTable } from "../../figures/ask/askedCells.ts";
import { counted } from "../../findings/counted.ts";
import { DataTableView } from "../DataTableView.tsx";
import { Entry } from "../Entry.tsx";
import { Figure } from "../Figure.tsx";
import type { AskHands, AskStage } from "./askState.ts";

/** More rows than this stay folded under their drawing. */
const MOST_OPEN = 25;

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
  const { sql, answer, figure } = stage;
  const rows = counted(answer.rows.length, "row");
  return (
    <Entry id="answer" title="Answer" note={answer.more ? `The first ${rows}.` : `${rows}.`}>
      {/* On paper the box is not seen, and an answer without its question says nothing. */}
      <pre class="print-only">{sql}</pre>
      {figure === null ? null : <Figure spec={figure} numbersIn="#asked-rows" />}
      {answer.rows.length === 0 ? null : (
        <p>
          <button type="button" class="button" onClick={() => hands?.download()}>
            {`Save ${rows} as CSV`}
          </button>
        </p>
      )}
      <div id="asked-rows">
        {answer.rows.length === 0 ? (
          <p role="status">No row answers to this question.</p>
        ) : (
          <details class="fold" open={figure === null || answer.rows.length <= MOST_OPEN}>
            <summary>The rows</summary>
            <DataTableView table={askedTable(answer)} caption="Rows of the answer" />
          </details>
        )}
      </div>
    </Entry>
  );
}
