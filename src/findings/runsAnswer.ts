import type { RunPageResult } from "../report/runPageResult.ts";
import type { RunRow } from "../report/runRow.ts";
import { printDate } from "../units/instant.ts";
import { print } from "../units/print.ts";
import type { UnitSystem } from "../units/unitSystem.ts";
import { countedInWords } from "./counted.ts";
import { joinSentences, type Sentence, strong } from "./sentence.ts";

/** How many batches the logs hold, and over what time. */
export function runsAnswer(runs: readonly RunRow[], timeZone: string): Sentence {
  if (runs.length === 0) return ["These logs hold no batch yet."];
  const starts = runs.map((run) => run.loadedAt ?? run.steepStartedAt).filter((at) => at !== null);
  const count = countedInWords(runs.length, "batch", "batches");
  if (starts.length === 0) return [strong(count), "."];
  const from = printDate(Math.min(...starts), timeZone);
  const to = printDate(Math.max(...starts), timeZone);
  return from === to ? [strong(count), `, on ${from}.`] : [strong(count), ` from ${from} to ${to}.`];
}

/** What became of one batch: grain in, malt out, hours in the kiln, and whether those were what was expected. */
export function runAnswer(result: RunPageResult, units: UnitSystem): Sentence {
  const { run, expectedHours, problems } = result;
  const isUnread = problems.some(({ effect }) => effect === "row-set-aside");
  const unknown = isUnread ? "what came out could not be read, its faults stand below." : "no malt is logged yet.";
  const grain = run.grainInKilograms === null ? null : print(run.grainInKilograms, "mass", units);
  const malt = run.maltKilograms ?? run.maltOutKilograms;
  const made: Sentence =
    grain !== null && malt !== null
      ? [strong(grain), ` of ${run.grain ?? "grain"} made `, strong(print(malt, "mass", units)), " of malt."]
      : grain !== null
        ? [strong(grain), ` of ${run.grain ?? "grain"} went in; ${unknown}`]
        : malt !== null
          ? [strong(print(malt, "mass", units)), " of malt came out; the grain in is not logged."]
          : ["Neither grain in nor malt out is logged."];
  return joinSentences([made, hoursOfRun(run, expectedHours)]);
}

function hoursOfRun(run: RunRow, expected: RunPageResult["expectedHours"]): Sentence {
  if (run.kilnHours === null) return run.loadedAt !== null && run.unloadedAt === null ? ["It is in the kiln."] : [];
  const took: Sentence = ["The kiln took ", strong(print(run.kilnHours, "hours", "metric"))];
  if (expected === null) return [...took, "."];
  const over = run.kilnHours - expected.estimate;
  if (run.kilnHours >= expected.low && run.kilnHours <= expected.high) {
    return [...took, `, as expected of that air and bed (${print(expected.estimate, "hours", "metric")}).`];
  }
  const difference = print(Math.abs(over), "hours", "metric");
  return [...took, `, ${difference} ${over > 0 ? "longer" : "less"} than that air and bed account for.`];
}
