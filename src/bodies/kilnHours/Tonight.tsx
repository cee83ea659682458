import {
  clockAndDay,
  clockOf,
  hoursInWords,
  whatIfIntervalSentence,
  whatIfModelSentence,
} from "../../findings/whatIfSentence.ts";
import type { WhatIfInputs } from "../../report/kilnHoursResult.ts";
import type { WhatIfAnswer, WhatIfEstimate } from "../../report/whatIfAnswer.ts";
import { useBody, useUnits } from "../context.ts";
import { Entry } from "../Entry.tsx";
import { Said } from "../Said.tsx";
import { type WhatIfField, whatIfFields } from "./whatIfFields.ts";

interface TonightProps {
  /** What this house usually loads; null where the logs cannot carry an estimate. */
  readonly usual: WhatIfInputs | null;
  readonly answer: WhatIfAnswer;
}

function Field({ field, wrong }: { readonly field: WhatIfField; readonly wrong: boolean }) {
  const id = `tonight-${field.name}`;
  return (
    <div class="field">
      <label for={id}>{field.label}</label>
      <span class="entered">
        <input
          id={id}
          name={field.name}
          data-control={field.name}
          value={field.value}
          {...(field.kind === "clock" ? { type: "time" } : { type: "text", inputMode: "decimal" })}
          autoComplete="off"
          {...(field.unit === "" ? {} : { "aria-describedby": `${id}-unit` })}
          {...(wrong ? { "aria-invalid": "true" } : {})}
        />
        {field.unit === "" ? null : (
          <span class="unit" id={`${id}-unit`}>
            {field.unit}
          </span>
        )}
      </span>
    </div>
  );
}

function Estimate({ answer, finish }: { readonly answer: WhatIfEstimate; readonly finish: string }) {
  return (
    <>
      <p class="hours">{hoursInWords(answer)}</p>
      <dl class="times">
        {answer.readyAt === null ? null : (
          <div>
            <dt>ready for the ramp, about</dt>
            <dd>{clockAndDay(answer.readyAt)}</dd>
          </div>
        )}
        <div>
          <dt>off the kiln, about</dt>
          <dd>{clockAndDay(answer.offAt)}</dd>
        </div>
        {answer.latestStart === null ? null : (
          <div>
            <dt>{`to be surely off by ${finish}, load by`}</dt>
            <dd>{clockAndDay(answer.latestStart)}</dd>
          </div>
        )}
      </dl>
      <p>
        <Said sentence={whatIfIntervalSentence(answer)} />
      </p>
      <p class="small">
        <Said sentence={whatIfModelSentence(answer)} />
      </p>
    </>
  );
}

/** The tool the reader came for: tonight's air and bed in, the hours and the clock times out. */
export function Tonight({ usual, answer }: TonightProps) {
  const { view, hrefTo } = useBody();
  const units = useUnits();
  const caution = "An estimate is no leave to walk away from a kiln.";
  if (usual === null) {
    return (
      <Entry id="tonight" title="Tonight" note={caution}>
        <p class="refusal">
          {answer.kind === "refusal" ? answer.sentence : "These logs cannot carry an estimate yet."}
        </p>
      </Entry>
    );
  }
  const fields = whatIfFields(view.whatIf, usual, units);
  const wrong = answer.kind === "refusal" ? answer.field : undefined;
  const finish = fields.find(({ name }) => name === "finish")?.value ?? "";
  const given = fields
    .filter(({ value }) => value !== "")
    .map(({ label, value, unit }) => `${label.toLowerCase()} ${value}${unit === "" ? "" : `\u00a0${unit}`}`)
    .join(", ");
  return (
    <Entry id="tonight" title="Tonight" note={caution}>
      <div class="tonight">
        <form method="get" action={hrefTo("kiln-hours/")} class="tonight-fields needs-scripting" data-form="what-if">
          {fields.map((field) => (
            <Field field={field} wrong={field.name === wrong} />
          ))}
          <button type="submit" class="button">
            Reckon
          </button>
        </form>
        <p class="without-scripting">{`What this house usually loads: ${given}.`}</p>
        <div class="tonight-answer" role="status">
          {answer.kind === "estimate" ? (
            <Estimate answer={answer} finish={finish === "" ? clockOf(usual.wantedFinishMinutes ?? 0) : finish} />
          ) : (
            <p class="refusal">{answer.sentence}</p>
          )}
        </div>
      </div>
    </Entry>
  );
}
