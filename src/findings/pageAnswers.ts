import type { ReportWith } from "../report/report.ts";
import { changesAnswer } from "./changes/changesAnswer.ts";
import { kilnHoursAnswer } from "./kilnHoursAnswer.ts";
import { logsAnswer } from "./logsAnswer.ts";
import type { Sentence } from "./sentence.ts";
import { steepGerminationAnswer } from "./steepGermination/steepGerminationAnswer.ts";
import { thermostatAnswer } from "./thermostatAnswer.ts";
import type { Reader } from "./thermostatWords.ts";
import { varietiesAnswer } from "./varieties/varietiesAnswer.ts";
import { yieldMoistureAnswer } from "./yieldMoistureAnswer.ts";

/** The first sentence of each page that answers a question, as the front page and the review as JSON repeat them. */
export interface PageAnswers {
  readonly steepGermination: Sentence;
  readonly kilnHours: Sentence;
  readonly yieldMoisture: Sentence;
  readonly thermostat: Sentence;
  readonly varieties: Sentence;
  readonly changes: Sentence;
  readonly logs: Sentence;
}

export type AnsweredReport = ReportWith<
  "steepGermination" | "kilnHours" | "yieldMoisture" | "thermostat" | "varieties" | "changes"
>;

/** What each page answers, in its own words. */
export function pageAnswers(report: AnsweredReport, reader: Reader): PageAnswers {
  return {
    steepGermination: steepGerminationAnswer(report.steepGermination, reader.units),
    kilnHours: kilnHoursAnswer(report.kilnHours, reader.units),
    yieldMoisture: yieldMoistureAnswer(report.yieldMoisture, reader.timeZone),
    thermostat: thermostatAnswer(report.thermostat, reader),
    varieties: varietiesAnswer(report.varieties),
    changes: changesAnswer(report.changes, reader),
    logs: logsAnswer(report.logs, report.runs.length),
  };
}
