import type { ForeignHands, MatchColumnState } from "./foreignState.ts";

interface MatchColumnProps {
  readonly column: MatchColumnState;
  readonly hands: ForeignHands;
}

function Fields({ column, hands }: MatchColumnProps) {
  const { place, choices, use, units, unit, words, doubts } = column;
  const id = `match-${place}`;
  const doubted = doubts.length > 0 ? `${id}-doubts` : undefined;
  return (
    <div class="match-fields" id={`${id}-fields`}>
      <div class="field">
        <label for={`${id}-is`}>{`${column.heading} is`}</label>
        <select
          id={`${id}-is`}
          value={use}
          aria-describedby={doubted}
          onChange={({ currentTarget }) => hands.use(place, currentTarget.value)}
        >
          {choices.map((group) => (
            <optgroup label={group.label}>
              {group.choices.map(({ key, label }) => (
                <option value={key} selected={key === use}>
                  {label}
                </option>
              ))}
            </optgroup>
          ))}
        </select>
      </div>
      {units.length < 2 ? null : (
        <div class="field">
          <label for={`${id}-unit`}>written in</label>
          <select
            id={`${id}-unit`}
            value={unit}
            onChange={({ currentTarget }) => hands.unit(place, currentTarget.value)}
          >
            {units.map(({ key, label }) => (
              <option value={key} selected={key === unit}>
                {label}
              </option>
            ))}
          </select>
        </div>
      )}
      {words.map(({ found, meant, choices: meanings }, i) => (
        <div class="field">
          <label for={`${id}-word-${i}`}>{`“${found}” means`}</label>
          <select
            id={`${id}-word-${i}`}
            value={meant}
            onChange={({ currentTarget }) => hands.word(place, found, currentTarget.value)}
          >
            <option value="">not said</option>
            {meanings.map(({ key, label }) => (
              <option value={key} selected={key === meant}>
                {label}
              </option>
            ))}
          </select>
        </div>
      ))}
      {doubts.length === 0 ? null : (
        <ul class="match-doubts" id={doubted}>
          {doubts.map((doubt) => (
            <li>{doubt}</li>
          ))}
        </ul>
      )}
    </div>
  );
}

/** One column of a foreign file: a line that says what it is, and under it, where that is in doubt or asked for, the choice. */
export function MatchColumn({ column, hands }: MatchColumnProps) {
  const { place, heading, examples, said, why, isRead, isOpen } = column;
  return (
    <li class={isRead ? "match-column" : "match-column quiet"}>
      <p class="match-heading">
        <b>{heading}</b>
        <span class="quiet">{examples.length === 0 ? "blank in the first rows" : examples.join(" · ")}</span>
      </p>
      <p class="match-said">
        {said}
        {why === "" ? null : <span class="quiet">{why}</span>}
      </p>
      <button
        type="button"
        class="button button-quiet"
        aria-expanded={isOpen}
        aria-controls={`match-${place}-fields`}
        aria-label={isOpen ? `Fold ${heading}` : `Change ${heading}`}
        onClick={() => hands.turn(place)}
      >
        {isOpen ? "Fold" : "Change"}
      </button>
      {isOpen ? <Fields column={column} hands={hands} /> : null}
    </li>
  );
}
