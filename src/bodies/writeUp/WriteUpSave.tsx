import { counted } from "../../findings/counted.ts";
import type { WriteUpHands, WriteUpState } from "./writeUpState.ts";

/** Where a stage goes when it is done, and how a draft is given up and put back. */
export function WriteUpSave({ state, hands }: { readonly state: WriteUpState; readonly hands: WriteUpHands | null }) {
  const { draft, table, problems, tried, folder, said, undo } = state;
  const faults = problems.filter(
    ({ effect, rule }) => effect !== "note" && (tried || rule !== "needed-value-missing"),
  ).length;
  const typed = draft.stages[table] ?? {};
  const isBlank = Object.keys(typed).length === 0;
  return (
    <div class="write-up-save needs-screen">
      <p>
        <button
          type="button"
          class="button write-up-done"
          disabled={hands === null || isBlank || draft.run.trim() === ""}
          onClick={() => hands?.save()}
        >
          {folder === null ? `Download the row for ${table}.csv` : `Add to ${table}.csv`}
        </button>
      </p>
      {faults > 0 ? <p class="box-fault">{`${counted(faults, "place")} to mend first.`}</p> : null}
      <p role="status">
        {said ?? ""}{" "}
        <button type="button" class="button button-quiet" hidden={undo === null} onClick={() => hands?.undo()}>
          {undo ?? ""}
        </button>
      </p>
      {Object.values(draft.stages).some((stage) => Object.keys(stage).length > 0) ? (
        <p>
          <button type="button" class="button button-quiet" disabled={hands === null} onClick={() => hands?.remove()}>
            {`Remove what is typed of ${draft.run === "" ? "this batch" : draft.run}`}
          </button>
        </p>
      ) : null}
    </div>
  );
}
