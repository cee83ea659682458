import { filesInWords, matchFrom } from "../../findings/foreignSentences.ts";
import type { ForeignHands, MatchFixedState, MatchState } from "./foreignState.ts";
import { MatchColumn } from "./MatchColumn.tsx";
import { MatchLayout } from "./MatchLayout.tsx";
import { MatchPreview } from "./MatchPreview.tsx";
import { MatchProbes } from "./MatchProbes.tsx";

interface MatchFileProps {
  readonly matching: MatchState;
  readonly hands: ForeignHands;
}

/** The tables that the file holds. */
function Parts({ matching: { parts, morePartsOf }, hands }: MatchFileProps) {
  return (
    <div class="match-parts">
      <ul>
        {parts.map(({ id, label }) => (
          <li>
            {label}{" "}
            <button
              type="button"
              class="button button-quiet"
              aria-label={`Not in it: ${label}`}
              onClick={() => hands.dropPart(id)}
            >
              Not in it
            </button>
          </li>
        ))}
      </ul>
      <div class="field">
        <label for="match-more">{parts.length === 0 ? "It holds" : "It also holds"}</label>
        <select
          id="match-more"
          value=""
          onChange={({ currentTarget }) => {
            if (currentTarget.value !== "") hands.addPart(currentTarget.value);
          }}
        >
          <option value="">{parts.length === 0 ? "choose" : "nothing else"}</option>
          {morePartsOf.map(({ key, label }) => (
            <option value={key}>{label}</option>
          ))}
        </select>
      </div>
    </div>
  );
}

/** What no column says and is the same in the whole file. */
function Fixed({ one, hands }: { readonly one: MatchFixedState; readonly hands: ForeignHands }) {
  const { part, stem, label, value, choices, known, doubt } = one;
  const id = `match-fixed-${part.replace(" ", "-")}-${stem}`;
  const common = { id, "aria-describedby": doubt === null ? undefined : `${id}-doubt` };
  return (
    <div class="field">
      <label for={id}>{`${label}, in the whole file`}</label>
      {choices.length > 0 ? (
        <select {...common} value={value} onChange={({ currentTarget }) => hands.fix(part, stem, currentTarget.value)}>
          <option value="">not said</option>
          {choices.map(({ key, label: meaning }) => (
            <option value={key} selected={key === value}>
              {meaning}
            </option>
          ))}
        </select>
      ) : (
        <input
          {...common}
          type="text"
          autoComplete="off"
          list={known.length > 0 ? `${id}-known` : undefined}
          value={value}
          onInput={({ currentTarget }) => hands.fix(part, stem, currentTarget.value)}
        />
      )}
      {known.length === 0 ? null : (
        <datalist id={`${id}-known`}>
          {known.map((name) => (
            <option value={name} />
          ))}
        </datalist>
      )}
      {doubt === null ? null : (
        <p class="match-doubt" id={`${id}-doubt`}>
          {doubt}
        </p>
      )}
    </div>
  );
}

/** One file with headings of its own: what it holds, column by column, and its first rows as they will be read. */
export function MatchFile({ matching, hands }: MatchFileProps) {
  const { key, paths, isTaken, isGiven, canGoBack, fixed, columns, probes, previewIn, previews, said } = matching;
  return (
    <section class="match" aria-labelledby="match-title">
      <h3 id="match-title" tabIndex={-1}>
        {filesInWords(paths)}
      </h3>
      <p class="small">{matchFrom(isGiven)}</p>
      <h4>What it holds</h4>
      <Parts matching={matching} hands={hands} />
      {fixed.length === 0 ? null : (
        <div class="choose-fields">
          {fixed.map((one) => (
            <Fixed one={one} hands={hands} />
          ))}
        </div>
      )}
      <h4>How it is written</h4>
      <MatchLayout matching={matching} hands={hands} />
      <h4>Column by column</h4>
      <ul class="match-columns">
        {columns.map((column) => (
          <MatchColumn key={column.place} column={column} hands={hands} />
        ))}
      </ul>
      {probes.length === 0 ? null : <MatchProbes probes={probes} hands={hands} />}
      <h4>The first rows as they will be read</h4>
      <p class="small">{previewIn}</p>
      {previews.map((preview) => (
        <MatchPreview key={preview.label} preview={preview} />
      ))}
      <p class="actions match-actions">
        <button type="button" class="button" onClick={hands.take}>
          Read it so
        </button>{" "}
        {isTaken ? (
          <button type="button" class="button button-quiet" onClick={() => hands.leave(key)}>
            Leave it as it was
          </button>
        ) : (
          <button type="button" class="button button-quiet" onClick={() => hands.leaveOut(key)}>
            Leave this file out
          </button>
        )}{" "}
        {canGoBack ? (
          <button type="button" class="button button-quiet" onClick={hands.back}>
            Take the last change back
          </button>
        ) : null}
      </p>
      {said === null ? null : (
        <p class="refusal" role="alert">
          {said}
        </p>
      )}
    </section>
  );
}
