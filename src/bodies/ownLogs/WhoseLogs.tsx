import { whoseLogs } from "../../findings/ownLogsSentences.ts";

interface WhoseLogsProps {
  /** The house whose logs are shown; null while they are still being read and the site's own stand. */
  readonly house: string | null;
  readonly kept: boolean;
  /** How far reading has come. */
  readonly progress: string;
  readonly yourLogsHref: string;
}

/** Stands on every page while own logs are shown or read, so that nobody takes one house's pages for another's. */
export function WhoseLogs({ house, kept, progress, yourLogsHref }: WhoseLogsProps) {
  return house === null ? (
    <p>
      {"The page still shows this site’s own logs. "}
      <span role="status">{progress}</span>{" "}
      <button type="button" class="button button-quiet" data-action="cancel">
        Cancel
      </button>
    </p>
  ) : (
    <p>
      <strong>{whoseLogs(house)}</strong> <a href={yourLogsHref}>What was read</a>{" "}
      <button type="button" class="button button-quiet" data-own="back">
        {kept ? "Take them out of this browser" : "Back to this site’s logs"}
      </button>
    </p>
  );
}
