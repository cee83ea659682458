import type { Problem } from "../../tables/problem.ts";
import type { WriteUpField } from "../../tables/writeUp/writeUpStages.ts";
import type { WriteUpHands } from "./writeUpState.ts";

interface WriteUpBoxProps {
  readonly field: WriteUpField;
  readonly value: string;
  readonly problems: readonly Problem[];
  /** Names offered while typing. */
  readonly known: readonly string[];
  readonly hands: WriteUpHands | null;
}

/** `started_at` means *first water on*: what the box is for, without what only a reader of the format needs. */
const labelOf = ({ column: { meaning } }: WriteUpField): string => {
  const words = meaning.split(/[;(]/)[0]?.trim() ?? meaning;
  return words.charAt(0).toUpperCase() + words.slice(1);
};

const INPUT_OF = {
  instant: { type: "datetime-local" },
  date: { type: "date" },
  number: { type: "text", inputMode: "decimal" },
  count: { type: "text", inputMode: "numeric" },
  flag: { type: "text" },
  choice: { type: "text" },
  id: { type: "text", autoCapitalize: "off" },
  text: { type: "text" },
} as const;

function Input({ field, value, problems, known, hands }: WriteUpBoxProps) {
  const { heading, column } = field;
  const id = `box-${heading}`;
  const common = {
    id,
    "aria-invalid": problems.length > 0 ? ("true" as const) : undefined,
    "aria-describedby": problems.length > 0 ? `${id}-said` : undefined,
    disabled: hands === null,
    onInput: ({ currentTarget }: { readonly currentTarget: { readonly value: string } }) =>
      hands?.type(heading, currentTarget.value),
  };
  if (column.choices !== undefined) {
    return (
      <select {...common} value={value}>
        <option value="" />
        {column.choices.map((choice) => (
          <option value={choice}>{choice.replaceAll("_", " ")}</option>
        ))}
      </select>
    );
  }
  return (
    <>
      <input
        {...common}
        {...INPUT_OF[column.kind]}
        value={value}
        autoComplete="off"
        list={known.length > 0 ? `${id}-known` : undefined}
      />
      {known.length > 0 ? (
        <datalist id={`${id}-known`}>
          {known.map((name) => (
            <option value={name} />
          ))}
        </datalist>
      ) : null}
    </>
  );
}

/** One box of a write-up, large enough for a wet thumb, with what the rules say of it. */
export function WriteUpBox(props: WriteUpBoxProps) {
  const { field, value, problems, hands } = props;
  const { heading, column, unit } = field;
  const count = Number(value === "" ? "0" : value);
  return (
    <div class="box">
      <label for={`box-${heading}`}>
        {labelOf(field)}
        {column.needed ? <span class="box-needed"> needed</span> : null}
        <code>{heading}</code>
      </label>
      <div class="box-entered">
        <Input {...props} />
        {column.choices === undefined && column.kind !== "instant" && unit !== "" ? <span>{unit}</span> : null}
        {column.kind === "instant" ? (
          <button type="button" class="button" disabled={hands === null} onClick={() => hands?.now(heading)}>
            Now
          </button>
        ) : null}
        {column.kind === "count" && Number.isInteger(count) ? (
          <button
            type="button"
            class="button"
            aria-label={`One more: ${labelOf(field)}`}
            disabled={hands === null}
            onClick={() => hands?.type(heading, String(count + 1))}
          >
            +1
          </button>
        ) : null}
      </div>
      {problems.length > 0 ? (
        <p
          class={problems.every(({ effect }) => effect === "note") ? "box-note" : "box-fault"}
          id={`box-${heading}-said`}
        >
          {problems.map(({ message, hint }) => `${message} ${hint}`).join(" ")}
        </p>
      ) : null}
    </div>
  );
}
