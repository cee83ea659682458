import { printNumber } from "../../units/print.ts";
import type { AskHands, AskState } from "./askState.ts";

interface AskFormProps {
  readonly state: AskState;
  readonly hands: AskHands | null;
}

/** Where a question is typed, asked and stopped. Control and Enter together ask as well. */
export function AskForm({ state: { sql, replaced, stage }, hands }: AskFormProps) {
  const asking = stage.kind === "asking";
  const seconds = asking ? stage.seconds : 0;
  return (
    <form
      class="ask-form needs-scripting"
      data-form="ask"
      onSubmit={(event) => {
        event.preventDefault();
        hands?.ask(sql);
      }}
    >
      <div class="field">
        <label for="ask-sql">Question in SQL</label>
        <textarea
          id="ask-sql"
          rows={9}
          spellcheck={false}
          autocapitalize="off"
          autocomplete="off"
          value={sql}
          onInput={({ currentTarget }) => hands?.type(currentTarget.value)}
          onKeyDown={(event) => {
            if (event.key !== "Enter" || !(event.ctrlKey || event.metaKey)) return;
            event.preventDefault();
            hands?.ask(sql);
          }}
        />
      </div>
      <p class="ask-buttons">
        <button type="submit" class="button" disabled={hands === null || asking}>
          Ask
        </button>{" "}
        <button
          type="button"
          class="button button-quiet"
          hidden={!asking}
          disabled={asking && stage.stopping}
          onClick={() => hands?.stop()}
        >
          Stop
        </button>{" "}
        <button
          type="button"
          class="button button-quiet"
          hidden={replaced === null || asking}
          onClick={() => hands?.putBack()}
        >
          Put my own question back
        </button>{" "}
        <output>{asking && seconds > 0 ? `Asking for ${printNumber(seconds, 0)}\u00a0s` : ""}</output>
      </p>
      <p class="progress">
        <output data-slot="progress" />{" "}
        <button type="button" class="button button-quiet" data-action="cancel" hidden>
          Cancel
        </button>
      </p>
    </form>
  );
}
