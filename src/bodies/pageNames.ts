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

export const homePage: PageName = { title: "Front page", path: "", stage: "none" };
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
export const notFoundPage: PageName = { title: "Not found", path: "404/", stage: "none" };

/** The page of one batch, which stands below Runs. */
export const runPageName = (run: string): PageName => ({ title: `Batch ${run}`, path: runPath(run), stage: "none" });

/** The page of one variety, which stands below Varieties. */
export const varietyPageName = (variety: string): PageName => ({
  title: `Variety ${variety}`,
  path: varietyPath(variety),
  stage: "none",
});

/** In the order of the navigation; the front page is the house's name. */
export const PAGES: readonly PageName[] = [
  steepGerminationPage,
  kilnHoursPage,
  yieldMoisturePage,
  thermostatPage,
  varietiesPage,
  changesPage,
  runsPage,
  sharedPagesPage,
  logsPage,
];
