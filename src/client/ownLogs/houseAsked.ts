import { isTimeZone } from "../../tables/localTime.ts";
import { RefusedLogs } from "./chosenFile.ts";

/** A house without a name of its own. */
const SOME_HOUSE = "My malthouse";

/** A text as TOML writes it: a JSON string is one, but for the character 127, which TOML wants told by its number. */
const quoted = (text: string): string => JSON.stringify(text).replaceAll("\u007f", "\\u007f");

/**
 * What the fields say of a house, as the text of a house.toml.
 *
 * @throws {RefusedLogs} on a time zone that does not exist
 */
export function houseAsked(fields: FormData): string {
  const text = (name: string): string => String(fields.get(name) ?? "").trim();
  const zone = text("zone");
  if (!isTimeZone(zone)) {
    throw new RefusedLogs(
      `There is no time zone called “${zone}”. Give it by its place, such as Europe/Berlin or America/Chicago.`,
    );
  }
  return [
    `name = ${quoted(text("name") || SOME_HOUSE)}`,
    `time_zone = ${quoted(zone)}`,
    `units = ${quoted(text("units") === "us" ? "us" : "metric")}`,
    `date_order = ${quoted(["dmy", "mdy"].find((order) => order === text("dates")) ?? "ymd")}`,
    "",
  ].join("\n");
}
