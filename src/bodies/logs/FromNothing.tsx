import { useBody } from "../context.ts";
import { Entry } from "../Entry.tsx";
import { runCardPage } from "../pageNames.ts";

/** For a house that keeps no logs yet, or keeps them otherwise. */
export function FromNothing() {
  const { hrefTo } = useBody();
  return (
    <Entry id="from-nothing" title="Beginning a log">
      <p>
        <a href={hrefTo(runCardPage.path)} data-still="">
          A run card
        </a>{" "}
        to print for each batch, and empty logs to type it into, in{" "}
        <a href={hrefTo("new-house.zip")} data-still="" download="new-house.zip">
          kg, °C and cm
        </a>{" "}
        or in{" "}
        <a href={hrefTo("new-house-us.zip")} data-still="" download="new-house-us.zip">
          lb, °F and inches
        </a>
        . A spreadsheet or logger with headings of its own stays as it is: a columns.toml beside it says what they mean.
      </p>
    </Entry>
  );
}
