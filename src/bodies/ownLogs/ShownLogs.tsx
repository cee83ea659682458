import { counted } from "../../findings/counted.ts";
import { keepMatches } from "../../findings/foreignSentences.ts";
import { useBody } from "../context.ts";
import { Entry } from "../Entry.tsx";
import { homePage, kilnHoursPage, runsPage } from "../pageNames.ts";
import type { OwnLogsState } from "./ownLogsState.ts";

interface ShownLogsProps {
  readonly house: string;
  /** How many. */
  readonly problems: number;
  readonly own: OwnLogsState;
}

const KEPT =
  "They are kept in this browser, as they were when they were read, and come back when a page is loaded anew. Whoever uses this browser can see them.";
const NOT_KEPT = "They are gone once the page is closed or loaded anew, unless you have them kept in this browser.";

/** Once own logs are shown: where to go, how long they stay, and the way back. */
export function ShownLogs({ house, problems, own }: ShownLogsProps) {
  const { hrefTo } = useBody();
  return (
    <Entry id="shown" title="Now shown" note={house}>
      <p class="lede-strong">
        Every page now shows these logs: <a href={hrefTo(homePage.path)}>the month in review</a>,{" "}
        <a href={hrefTo(kilnHoursPage.path)}>kiln hours</a>, <a href={hrefTo(runsPage.path)}>batch by batch</a> and all
        others above.
      </p>
      <p>
        {own.kept ? KEPT : NOT_KEPT}
        {own.keptOthers ? " Those kept here from before come back then." : null}
      </p>
      <p class="needs-scripting actions">
        <button type="button" class="button" data-own="keep">
          {own.kept ? "Keep them no longer" : "Keep them in this browser"}
        </button>{" "}
        <button type="button" class="button" data-own="back">
          Take them out and go back to this site’s logs
        </button>
      </p>
      {own.canKeepFormer ? (
        <p class="needs-scripting">
          {"Those kept here from before gave way to these. "}
          <button type="button" class="button button-quiet" data-own="keep-former">
            Keep those again instead
          </button>
        </p>
      ) : null}
      {own.canReturn ? (
        <p class="needs-scripting">
          {"Other logs of yours were shown before. "}
          <button type="button" class="button button-quiet" data-own="again">
            Show those again
          </button>
        </p>
      ) : null}
      {own.hasMatches ? (
        <p class="needs-scripting">
          {keepMatches}{" "}
          <button type="button" class="button button-quiet" data-own="matches">
            Save columns.toml
          </button>
        </p>
      ) : null}
      {problems === 0 ? null : (
        <p class="needs-scripting">
          <button type="button" class="button button-quiet" data-own="problems">
            {`Save the list of ${counted(problems, "message")} as CSV`}
          </button>
        </p>
      )}
    </Entry>
  );
}
