import { chosenInWords, mostInWords } from "../../findings/ownLogsSentences.ts";
import { printNumber } from "../../units/print.ts";
import { useBody } from "../context.ts";
import { Entry } from "../Entry.tsx";
import { yourLogsPage } from "../pageNames.ts";
import { HouseFields } from "./HouseFields.tsx";
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

/** Where files are chosen or dropped, and what must be known of a house that has no settings file. */
export function ChooseLogs({ own }: { readonly own: OwnLogsState }) {
  const { hrefTo } = useBody();
  const { chosen, stage, said } = own;
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
      {chosen.length === 0 ? null : <Chosen chosen={chosen} />}
      <form method="get" action={hrefTo(yourLogsPage.path)} data-form="own-logs">
        <HouseFields timeZone={own.timeZone} />
        <p>
          <label class="tick">
            <input type="checkbox" name="keep" />
            Keep these logs in this browser until I take them out
          </label>
        </p>
        <p class="progress">
          <button type="submit" class="button" data-own="read" disabled={reading || chosen.length === 0}>
            Read these logs
          </button>{" "}
          <span data-slot="progress" role="status" />{" "}
          <button type="button" class="button button-quiet" data-action="cancel" hidden>
            Cancel
          </button>
        </p>
      </form>
      {own.canReturn && stage === "none" ? (
        <p>
          {"Your logs were taken out. "}
          <button type="button" class="button button-quiet" data-own="again">
            Show them again
          </button>
        </p>
      ) : null}
      {said === null ? null : (
        <p class="refusal" role="alert">
          {said}
        </p>
      )}
    </Entry>
  );
}
