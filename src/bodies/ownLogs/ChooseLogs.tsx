import { chosenInWords, mostInWords } from "../../findings/ownLogsSentences.ts";
import { printNumber } from "../../units/print.ts";
import { Entry } from "../Entry.tsx";
import type { ChosenBrief, OwnLogsState } from "./ownLogsState.ts";

/** A field that takes a whole folder: not in the standard's list of attributes, and in every browser for years. */
const ofFolder: Record<string, boolean> = { webkitdirectory: true };

/** More names than this stay folded. */
const MOST_NAMED = 8;

function Chosen({ chosen }: { readonly chosen: readonly ChosenBrief[] }) {
  return (
    <>
      <details class="fold" open={chosen.length <= MOST_NAMED}>
        <summary>{`Chosen: ${chosenInWords(chosen)}`}</summary>
        <ul class="lines">
          {chosen.map(({ path, bytes }) => (
            <li>
              {path} <span class="quiet">{`${printNumber(bytes / 1000, 0)}\u00a0kB`}</span>
            </li>
          ))}
        </ul>
      </details>
      <button type="button" class="button button-quiet" data-own="none">
        Choose none of them
      </button>
    </>
  );
}

/** Where files are chosen or dropped. */
export function ChooseLogs({ own }: { readonly own: OwnLogsState }) {
  const { chosen, stage } = own;
  const reading = stage === "reading";
  return (
    <Entry
      id="choose"
      title={stage === "shown" ? "Other logs" : "Choose"}
      note="CSV files, the folder that holds them, or a zip of it. Each log is known by the headings in its first line, whatever the file is called."
      class="needs-scripting"
    >
      <div class="drop" data-own="drop">
        <div class="field">
          <label for="own-files">Files, or a zip</label>
          <input id="own-files" type="file" multiple data-own="files" disabled={reading} />
        </div>
        <div class="field">
          <label for="own-folder">A folder</label>
          <input id="own-folder" type="file" multiple {...ofFolder} data-own="folder" disabled={reading} />
        </div>
        <p class="small">Or drop files, a folder or a zip on this page. {mostInWords}</p>
      </div>
      {chosen.length > 0 ? (
        <Chosen chosen={chosen} />
      ) : own.canRechoose ? (
        <button type="button" class="button button-quiet" data-own="rechoose">
          Choose them again
        </button>
      ) : null}
      <p class="small" role="status">
        {own.isLooking ? "Looking at how these files begin …" : ""}
      </p>
    </Entry>
  );
}
