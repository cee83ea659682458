import type { UnitSystem } from "../units/unitSystem.ts";
import { templateCsv, templatePath } from "./describeFormat.ts";
import { tableDeclarations } from "./tableDeclarations.ts";

/** What each log is for, in a beginner's words and in the order of the work. */
function logLines(): readonly string[] {
  return tableDeclarations.map((declaration) => `  ${templatePath(declaration)}\n      ${declaration.meaning}`);
}

const readme = (units: UnitSystem): string => `The logs of this malthouse
==========================

This folder holds what Piecebook reads. Every log is a plain CSV file: open it with any spreadsheet, write one
row for each thing the file is about, and save it as CSV (UTF-8) again.

Begin with three files
----------------------

  1. house.toml      the house's settings. Open it with a plain text editor: give the house its name, its time
                     zone and its kilns.
  2. steeping.csv    one row for each tank of each batch.
  3. kilning.csv     one row for each batch in the kiln.

A batch has one name, its run, from the steep to the bag. Use the same one in every file.

A few habits
------------

  - Leave blank what was not measured. Blank is not zero.
  - Times are the clock on the wall: 2026-03-08 14:30. Dates are 2026-03-08. If you write them otherwise, say so
    under date_order in house.toml.
  - The unit stands in the heading. This folder begins in ${units === "us" ? "pounds, °F and inches (_lb, _f, _in); write _kg, _c or _cm" : "kilograms, °C and centimetres (_kg, _c, _cm); write _lb, _f or _in"}
    in a heading if a column is in those.
  - A column that you never fill may go; a file that you never fill may go too. Columns of your own may be added.
  - Headings stay as they are. If your spreadsheet or your logger writes others, keep the file as it is and let a
    columns.toml say what they mean: check-logs with --match suggests one.

The files, in the order of the work
-----------------------------------

${logLines().join("\n")}

See whether it can be read
--------------------------

From the folder of Piecebook:

    npm run check-logs -- THIS-FOLDER

It names every fault with its file, line and column. data/README.md says what every column means. Keep a copy of
this folder somewhere else: the logs are the only thing that cannot be made again.
`;

/**
 * The files of a house that has no logs yet: house.toml, every log with its headings alone, and a README in plain words.
 *
 * @param houseToml the text of data/templates/house.toml
 * @returns texts by their paths in the new folder
 */
export function newHouseFiles(houseToml: string, units: UnitSystem): ReadonlyMap<string, string> {
  return new Map([
    ["README.txt", readme(units)],
    ["house.toml", houseToml.replace(/^units = "metric"$/m, `units = "${units}"`)],
    ...tableDeclarations.map((declaration) => [templatePath(declaration), templateCsv(declaration, units)] as const),
  ]);
}
