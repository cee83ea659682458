import type { FigureSpec } from "../../figures/figureSpec.ts";
import {
  hoursBetweenSentence,
  hoursInWords,
  whatIfInWords,
  whatIfModelSentence,
} from "../../findings/whatIfSentence.ts";
import type { WhatIfInputs } from "../../report/kilnHoursResult.ts";
import type { WhatIfAnswer, WhatIfEstimate } from "../../report/whatIfAnswer.ts";
import { useBody, useUnits } from "../context.ts";
import { Entry } from "../Entry.tsx";
import { Figure } from "../Figure.tsx";
import { Said } from "../Said.tsx";
import { type WhatIfField, whatIfFields } from "./whatIfFields.ts";

interface TonightProps {
  /** What this house usually loads; null where the logs cannot carry an estimate. */
  readonly usual: WhatIfInputs | null;
  readonly answer: WhatIfAnswer;
  /** The estimate on a clock; null beside a refusal. */
  readonly figure: FigureSpec | null;
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
          {...(field.placeholder === undefined ? {} : { placeholder: field.placeholder })}
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

function Estimate({ answer, figure }: { readonly answer: WhatIfEstimate; readonly figure: FigureSpec | null }) {
  return (
    <>
      <p class="hours">{hoursInWords(answer)}</p>
      <p class="hours-between">
        <Said sentence={hoursBetweenSentence(answer)} />
      </p>
      <p class="lede-strong">
        <Said sentence={whatIfInWords(answer)} />
      </p>
      {figure === null ? null : <Figure spec={figure} />}
      <p class="small">
        <Said sentence={whatIfModelSentence(answer)} />
      </p>
    </>
  );
}

/** The tool the reader came for: tonight's air and bed in, the hours and the clock times out. */
export function Tonight({ usual, answer, figure }: TonightProps) {
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
  const given = whatIfFields({}, usual, units)
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
        </form>
        <p class="without-scripting">{`What this house usually loads: ${given}.`}</p>
        <div class="tonight-answer" role="status">
          {answer.kind === "estimate" ? (
            <Estimate answer={answer} figure={figure} />
          ) : (
            <p class="refusal">{answer.sentence}</p>
          )}
        </div>
      </div>
    </Entry>
  );
}
