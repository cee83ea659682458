// npm run review [-- 2026-09]: a month in review as text, the latest unless told otherwise, in the words of the page.
//
//   --logs DIR     another house's logs
//   --json         for machines, with every number of the other pages; data/README.md says what is in it
//
// Ends with 0 for a quiet month, 1 where there is something to look at or a file could not be read, 2 where the logs cannot be used.

import { existsSync } from "node:fs";
import { parseArgs } from "node:util";
import type { ReviewReader } from "../src/findings/review/reader.ts";
import { reviewText } from "../src/findings/review/reviewText.ts";
import { reportFromFolder } from "../src/report/atBuild.ts";
import { printDateInFull } from "../src/units/instant.ts";
import { DEMO_LOGS } from "./buildSite.ts";
import { reviewJson } from "./review/reviewJson.ts";

/** Says why there is nothing to print, and ends. */
function refuse(why: string): never {
  console.error(why);
  process.exit(2);
}

function readCommand() {
  try {
    return parseArgs({
      allowPositionals: true,
      options: { logs: { type: "string", default: DEMO_LOGS }, json: { type: "boolean", default: false } },
    });
  } catch (error) {
    return refuse(
      `${error instanceof Error ? error.message : String(error)}\nnpm run review -- [2026-09] [--logs DIR] [--json]`,
    );
  }
}

const { values, positionals } = readCommand();
const [wanted = null] = positionals;
if (positionals.length > 1 || (wanted !== null && !/^\d{4}-(0[1-9]|1[0-2])$/.test(wanted))) {
  refuse(`Name one month as 2026-09; got ${positionals.join(" ")}.`);
}
if (!existsSync(values.logs)) refuse(`There is no folder ${values.logs}: give the folder that holds your CSV logs.`);

const { report } = await reportFromFolder(values.logs, wanted).catch((error: unknown) =>
  refuse(`${values.logs} cannot be read: ${error instanceof Error ? error.message : String(error)}`),
);
const { months, monthsThereAre, costs, tooLittle } = report.review;
const review = months.find(({ totals }) => wanted === null || totals.month === wanted);
if (tooLittle !== null || review === undefined) {
  const there = `The logs in ${values.logs} hold no ${wanted}: they reach from ${monthsThereAre.at(-1)} to ${monthsThereAre[0]}.`;
  refuse(tooLittle === null ? there : `${values.logs}: ${tooLittle} npm run check-logs says what is wrong with them.`);
}

const { house, lastLoggedAt } = report;
const reader: ReviewReader = { units: house.units, timeZone: house.timeZone, costs };
const logsTo = lastLoggedAt === null ? null : printDateInFull(lastLoggedAt, house.timeZone);
console.log(
  values.json
    ? reviewJson(report, review, reader)
    : reviewText(review, reader, { house: house.name, invented: house.invented, logsTo }),
);
process.exitCode = review.findings.length + review.logHealth.filesSetAside.length === 0 ? 0 : 1;
