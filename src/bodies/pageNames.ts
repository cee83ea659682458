import { monthPath } from "../units/calendarMonth.ts";
import { printMonth } from "../units/instant.ts";
import { runPath } from "../units/runPath.ts";
import { varietyPath } from "../units/varietyPath.ts";
import type { Stage } from "./Answer.tsx";

/** A page of the site: what it is called everywhere, and its path from the root. */
export interface PageName {
  readonly title: string;
  readonly path: string;
  readonly stage: Stage;
  /** True of a page that only the build can make: no live session draws it. */
  readonly still?: true;
}

/** The latest month is the front page. */
export const homePage: PageName = { title: "Month in review", path: "", stage: "none" };
export const steepGerminationPage: PageName = {
  title: "Steep and germination",
  path: "steep-and-germination/",
  stage: "germination",
};
export const kilnHoursPage: PageName = { title: "Kiln hours", path: "kiln-hours/", stage: "kiln" };
export const yieldMoisturePage: PageName = {
  title: "Yield and moisture",
  path: "yield-and-moisture/",
  stage: "none",
};
export const thermostatPage: PageName = { title: "Thermostat", path: "thermostat/", stage: "kiln" };
export const varietiesPage: PageName = { title: "Varieties", path: "varieties/", stage: "none" };
export const changesPage: PageName = { title: "Changes", path: "changes/", stage: "none" };
export const runsPage: PageName = { title: "Runs", path: "runs/", stage: "none" };
export const sharedPagesPage: PageName = { title: "Shared pages", path: "shared-pages/", stage: "none", still: true };
export const logsPage: PageName = { title: "Logs", path: "logs/", stage: "none" };
export const yourLogsPage: PageName = { title: "Your own logs", path: "your-logs/", stage: "none" };
export const runCardPage: PageName = { title: "Run card", path: "run-card/", stage: "none", still: true };
export const writeUpPage: PageName = { title: "Write up", path: "write-up/", stage: "none" };
export const askLogsPage: PageName = { title: "Ask the logs", path: "ask/", stage: "none" };
export const notFoundPage: PageName = { title: "Not found", path: "404/", stage: "none" };

/** The page of one batch, which stands below Runs. */
export const runPageName = (run: string): PageName => ({ title: `Batch ${run}`, path: runPath(run), stage: "none" });

/** The page of one variety, which stands below Varieties. */
export const varietyPageName = (variety: string): PageName => ({
  title: `Variety ${variety}`,
  path: varietyPath(variety),
  stage: "none",
});

/** The review of one month under its own address. @param month `2026-10` */
export const monthPageName = (month: string): PageName => ({
  title: `${printMonth(month)} in review`,
  path: monthPath(month),
  stage: "none",
});

/** Pages that answer, in the order of the navigation. */
const answerPages: readonly PageName[] = [
  homePage,
  steepGerminationPage,
  kilnHoursPage,
  yieldMoisturePage,
  thermostatPage,
  varietiesPage,
  changesPage,
  runsPage,
];

/** Pages where something is done: writing, asking, sharing, bringing. */
const deskPages: readonly PageName[] = [writeUpPage, askLogsPage, sharedPagesPage, logsPage, yourLogsPage];

/** The lines of the navigation. */
export const NAVIGATION: readonly (readonly PageName[])[] = [answerPages, deskPages];

const PAGES: readonly PageName[] = NAVIGATION.flat();

const REVIEWS = monthPath("").slice(0, -1);

/** The page of the navigation that a path belongs to: that of a batch below Runs, that of a month below Month in review. */
export function navigationPage(path: string): PageName | null {
  if (path === homePage.path || path.startsWith(REVIEWS)) return homePage;
  return PAGES.find((page) => page !== homePage && path.startsWith(page.path)) ?? null;
}
