import { unmatchedInWords } from "../../findings/foreignSentences.ts";
import { useBody } from "../context.ts";
import { Entry } from "../Entry.tsx";
import { yourLogsPage } from "../pageNames.ts";
import { HouseFields } from "./HouseFields.tsx";
import type { OwnLogsState } from "./ownLogsState.ts";

/** What must be known of a house that has no settings file, and the button that has the chosen files read. */
export function ReadLogs({ own }: { readonly own: OwnLogsState }) {
  const { hrefTo } = useBody();
  const { chosen, stage, said, foreign } = own;
  const reading = stage === "reading";
  const unmatched = unmatchedInWords(
    (foreign?.files ?? []).filter(({ status }) => status === "open").flatMap(({ paths }) => paths).length,
  );
  return (
    <Entry id="read" title="Read" class="needs-scripting">
      <form method="get" action={hrefTo(yourLogsPage.path)} data-form="own-logs">
        <HouseFields timeZone={own.timeZone} />
        <p>
          <label class="tick">
            <input type="checkbox" name="keep" />
            Keep these logs in this browser until I take them out
          </label>
        </p>
        {unmatched === null ? null : <p class="small">{unmatched}</p>}
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
          {"Your logs were taken off the pages. "}
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
