import type { WriteUpTable } from "../tables/writeUp/writeUpStages.ts";
import { Answer, type Stage } from "./Answer.tsx";
import { useBody } from "./context.ts";
import { Entry } from "./Entry.tsx";
import { LeftBox } from "./LeftBox.tsx";
import { runCardPage, writeUpPage } from "./pageNames.ts";
import { WriteUpBox } from "./writeUp/WriteUpBox.tsx";
import { WriteUpSave } from "./writeUp/WriteUpSave.tsx";
import type { WriteUpHands, WriteUpState } from "./writeUp/writeUpState.ts";

const STAGES: readonly { readonly table: WriteUpTable; readonly name: string; readonly stage: Stage }[] = [
  { table: "steeping", name: "Steep", stage: "steep" },
  { table: "germination", name: "Germination", stage: "germination" },
  { table: "kilning", name: "Kiln", stage: "kiln" },
];

interface WriteUpProps {
  readonly state: WriteUpState;
  readonly hands: WriteUpHands | null;
}

function Batch({ state: { draft, runs, others }, hands }: WriteUpProps) {
  return (
    <div class="box">
      <label for="box-run">
        Batch<span class="box-needed"> needed</span>
        <code>run</code>
      </label>
      <div class="box-entered">
        <LeftBox
          id="box-run"
          type="text"
          list="box-run-known"
          autoComplete="off"
          autoCapitalize="off"
          disabled={hands === null}
          value={draft.run}
          taken={(run) => hands?.choose(run)}
        />
        <datalist id="box-run-known">
          {runs.map((run) => (
            <option value={run} />
          ))}
        </datalist>
      </div>
      {others.length > 0 ? (
        <p class="write-up-others">
          Also under way here:{" "}
          {others.map((run) => (
            <button type="button" class="button button-quiet" onClick={() => hands?.choose(run)}>
              {run === "" ? "no name yet" : run}
            </button>
          ))}
        </p>
      ) : null}
    </div>
  );
}

function Folder({ state: { folder, keptFolder, opensFolders }, hands }: WriteUpProps) {
  const forget = (
    <button type="button" class="button button-quiet" onClick={() => hands?.forgetFolder()}>
      Forget this folder
    </button>
  );
  if (folder !== null) {
    return (
      <p>
        {`Rows are added to the files in ${folder}, under their own headings. This browser remembers the folder. `}
        {forget}
      </p>
    );
  }
  if (!opensFolders) {
    return (
      <p>This browser cannot write to your files: a finished stage is downloaded as CSV, to be put behind the log.</p>
    );
  }
  const choose = (
    <button
      type="button"
      class={keptFolder === null ? "button" : "button button-quiet"}
      disabled={hands === null}
      onClick={() => hands?.openFolder()}
    >
      {keptFolder === null ? "Open the logs folder" : "Open another folder"}
    </button>
  );
  if (keptFolder === null) return <p>{choose} Then rows are added to its files. Without it they are downloaded.</p>;
  return (
    <>
      <p>
        <button type="button" class="button" onClick={() => hands?.openKeptFolder()}>
          {`Open ${keptFolder} again`}
        </button>{" "}
        Then rows are added to its files, as on your last visit. Until then they are downloaded.
      </p>
      <p class="actions">
        {choose} {forget}
      </p>
    </>
  );
}

/** One batch written up stage by stage, on a phone beside the tank as well as at a desk. */
export function WriteUp({ state, hands }: WriteUpProps) {
  const { hrefTo } = useBody();
  const { table, fields, problems, draft, known, tried } = state;
  const typed = draft.stages[table] ?? {};
  const headings = new Set(fields.map(({ heading }) => heading));
  const shown = problems.filter(({ rule }) => tried || rule !== "needed-value-missing");
  const ofRow = shown.filter(({ column }) => column === null || !headings.has(column));
  return (
    <div class="write-up" data-wakes>
      <Answer
        page={writeUpPage.title}
        stage="none"
        answer={["Write up a batch, stage by stage."]}
        grounds={[
          [
            "Each box is checked by the rules that the logs are read with. What is typed stays in this browser until it is saved, and goes nowhere else.",
          ],
        ]}
      />
      <p class="without-scripting refusal">
        Writing up needs JavaScript, which is off here. <a href={hrefTo(runCardPage.path)}>The run card</a> can be
        printed and filled in by hand.
      </p>
      <Entry id="batch" title="Batch" class="needs-scripting">
        <Batch state={state} hands={hands} />
        <div class="needs-screen">
          <Folder state={state} hands={hands} />
        </div>
      </Entry>
      <Entry id="stage" title="Stage" class="needs-scripting">
        <div class="write-up-stages">
          {STAGES.map(({ table: one, name, stage }) => (
            <button
              type="button"
              class="button"
              data-stage={stage}
              aria-pressed={one === table}
              disabled={hands === null}
              onClick={() => hands?.turnTo(one)}
            >
              {name}
            </button>
          ))}
        </div>
        <div class="boxes" key={table}>
          {fields.map((field) => (
            <WriteUpBox
              key={field.heading}
              field={field}
              value={typed[field.heading] ?? ""}
              problems={shown.filter(({ column }) => column === field.heading)}
              known={known[field.column.stem] ?? []}
              hands={hands}
            />
          ))}
        </div>
        {ofRow.map(({ message, hint, effect }) => (
          <p class={effect === "note" ? "box-note" : "box-fault"}>{`${message} ${hint}`}</p>
        ))}
        <WriteUpSave state={state} hands={hands} />
      </Entry>
    </div>
  );
}
