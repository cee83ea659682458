import { Entry } from "../Entry.tsx";

/** A log as a file to save. */
export interface TakenFile {
  readonly name: string;
  readonly path: string;
}

/** The logs as they were read, to be saved as files, and all batches as one table. */
export function TakeAway({ files }: { readonly files: readonly TakenFile[] }) {
  return (
    <Entry
      id="take-away"
      title="Take it away"
      note="Checked, in metric units and UTC. Saved by this browser; the engine is fetched for it."
      class="needs-scripting"
    >
      <p>
        <button type="button" class="button" data-take="runs">
          Save all batches, one row each
        </button>{" "}
        <button type="button" class="button" data-take="folder">
          Save all logs as a zip
        </button>
      </p>
      <p>
        The logs as they were read, in the log format again: rows that were set aside are gone and values that were
        refused are blank. Names, keys and private notes never go out with the site, and so are not in them. A text that
        a spreadsheet would take for a formula has an apostrophe before it. The zip holds the settings, your own columns
        and each load’s readings too: chosen on the page Your own logs, it gives these pages again.
      </p>
      <ul class="take-files">
        {files.map(({ name, path }) => (
          <li>
            <button type="button" class="button button-quiet" data-take={name}>
              {path}
            </button>
          </li>
        ))}
      </ul>
      <p class="progress">
        <output data-slot="taken" /> <output data-slot="progress" />{" "}
        <button type="button" class="button button-quiet" data-action="cancel" hidden>
          Cancel
        </button>
      </p>
    </Entry>
  );
}
