import { listed } from "../../findings/counted.ts";
import {
  beyondThisPage,
  filesInWords,
  headingsInWords,
  keepMatches,
  olderMatchesUnreadable,
  ownHeadings,
  ownHeadingsKnown,
} from "../../findings/foreignSentences.ts";
import { Entry } from "../Entry.tsx";
import { type ForeignFileState, type ForeignHands, type ForeignState, foreignFileId } from "./foreignState.ts";
import { MatchFile } from "./MatchFile.tsx";

interface OneFileProps {
  readonly id: string;
  readonly file: ForeignFileState;
  readonly isMatched: boolean;
  readonly hands: ForeignHands;
}

function OneFile({ id, file, isMatched, hands }: OneFileProps) {
  const { key, paths, headings, status, isNews, tables } = file;
  const name = filesInWords(paths);
  return (
    <li>
      <p id={id} tabIndex={-1}>
        <b>{name}</b>{" "}
        {status === "taken" ? (
          <>
            {isNews ? `will be read as ${listed(tables)}.` : `will be read as ${listed(tables)}, as columns.toml says.`}
            {isNews && key.includes("*") ? (
              <span class="quiet">{` So will any file that is called ${key}.`}</span>
            ) : null}
          </>
        ) : status === "left-out" ? (
          "is left out."
        ) : status === "beyond" ? (
          beyondThisPage
        ) : (
          <span class="quiet">{`has headings of its own: ${headingsInWords(headings)}`}</span>
        )}
      </p>
      {isMatched ? (
        <p class="quiet">Being matched, below.</p>
      ) : status === "beyond" ? null : (
        <p class="actions">
          <button
            type="button"
            class="button"
            aria-label={`${status === "taken" ? "Look again" : "Match its columns"}: ${name}`}
            onClick={() => hands.match(key)}
          >
            {status === "taken" ? "Look again" : "Match its columns"}
          </button>
          {status === "taken" && isNews ? (
            <button
              type="button"
              class="button button-quiet"
              aria-label={`Undo: ${name}`}
              onClick={() => hands.undo(key)}
            >
              Undo
            </button>
          ) : null}
        </p>
      )}
    </li>
  );
}

/** The chosen files whose headings no log has, the one that is being matched, and the file that keeps what was said. */
export function ForeignFiles({ foreign }: { readonly foreign: ForeignState }) {
  const { files, matching, losesOlder, hands } = foreign;
  if (files.length === 0) return null;
  const isAllKnown = files.every(({ status, isNews }) => status === "beyond" || (status === "taken" && !isNews));
  return (
    <Entry
      id="foreign"
      title="Headings of their own"
      note={isAllKnown ? ownHeadingsKnown : ownHeadings}
      class="needs-scripting"
    >
      <ul class="lines foreign-files">
        {files.map((file, index) => (
          <OneFile
            key={file.key}
            id={foreignFileId(index)}
            file={file}
            isMatched={matching?.key === file.key}
            hands={hands}
          />
        ))}
      </ul>
      {matching === null ? null : <MatchFile matching={matching} hands={hands} />}
      {files.some(({ isNews }) => isNews) ? (
        <>
          {losesOlder ? <p class="match-doubt">{olderMatchesUnreadable}</p> : null}
          <p>{keepMatches}</p>
          <p>
            <button type="button" class="button" onClick={hands.save}>
              Save columns.toml
            </button>
          </p>
        </>
      ) : null}
    </Entry>
  );
}
