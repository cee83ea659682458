import type { ComponentChild } from "preact";
import { Changes } from "../bodies/Changes.tsx";
import { Home } from "../bodies/Home.tsx";
import { KilnHours } from "../bodies/KilnHours.tsx";
import { Logs } from "../bodies/Logs.tsx";
import { MonthReview, shownMonth } from "../bodies/MonthReview.tsx";
import type { OwnLogsState } from "../bodies/ownLogs/ownLogsState.ts";
import {
  askLogsPage,
  changesPage,
  homePage,
  kilnHoursPage,
  logsPage,
  monthPageName,
  type PageName,
  runPageName,
  runsPage,
  steepGerminationPage,
  thermostatPage,
  varietiesPage,
  varietyPageName,
  writeUpPage,
  yieldMoisturePage,
  yourLogsPage,
} from "../bodies/pageNames.ts";
import { RunPage } from "../bodies/RunPage.tsx";
import { Runs } from "../bodies/Runs.tsx";
import { SteepGermination } from "../bodies/SteepGermination.tsx";
import { Thermostat } from "../bodies/Thermostat.tsx";
import { shownLoad } from "../bodies/thermostat/shownLoad.ts";
import { Varieties } from "../bodies/Varieties.tsx";
import { VarietyPage } from "../bodies/VarietyPage.tsx";
import { YieldMoisture } from "../bodies/YieldMoisture.tsx";
import { answerTrial } from "../report/changes/answerTrial.ts";
import { answerWhatIf } from "../report/kilnHours/whatIf.ts";
import { readWhatIf } from "../report/kilnHours/whatIfInputs.ts";
import type { KilnHoursResult } from "../report/kilnHoursResult.ts";
import type { PartName, ReportWith } from "../report/report.ts";
import { runPage } from "../report/runPage.ts";
import type { KilnCurve } from "../report/runPageResult.ts";
import { type View, wholeView } from "../report/view.ts";
import type { WhatIfAnswer } from "../report/whatIfAnswer.ts";
import { monthPath } from "../units/calendarMonth.ts";
import { runFolder } from "../units/runPath.ts";
import type { UnitSystem } from "../units/unitSystem.ts";
import { varietyFolder } from "../units/varietyPath.ts";
import type { Ask } from "./askLogs/askCalls.ts";
import { holds, type LoadedReport } from "./loadedReport.ts";
import type { SitePlaces } from "./sitePlaces.ts";

export interface Showing<Report extends LoadedReport = LoadedReport> {
  /** Path from the site's root: `kiln-hours/`; that of a batch, month or variety even where the query names it (`ownPath`). */
  readonly path: string;
  readonly report: Report;
  readonly view: View;
  readonly places: SitePlaces;
  /** The readings of one load of these logs, by the name in its row. */
  readonly curve: (readingsFile: string) => Promise<KilnCurve>;
  /** A question in SQL, over all of the logs whatever the view. */
  readonly ask: Ask;
  /** How far the reader's own logs have come. */
  readonly own: OwnLogsState;
  /** Whose logs the report is of. */
  readonly logs: "site" | "own";
}

export interface Body {
  readonly name: PageName;
  readonly content: ComponentChild;
}

interface Page {
  readonly parts: readonly PartName[];
  /** True of a page that speaks of the whole house, whatever rows are chosen elsewhere. */
  readonly ofWholeHouse?: true;
  readonly body: (showing: Showing) => Promise<Body | null>;
}

/** A page that needs these parts of a report, and its body made of a report that holds them. */
function page<Part extends PartName>(
  parts: readonly Part[],
  body: (showing: Showing<LoadedReport & ReportWith<Part>>) => Body | null | Promise<Body | null>,
): Page {
  return {
    parts,
    async body({ report, ...about }) {
      if (!holds(report, parts)) throw new RangeError(`the page needs ${parts.join(", ")} of the report`);
      return body({ ...about, report });
    },
  };
}

function whatIfOf(kilnHours: KilnHoursResult, view: View, units: UnitSystem): WhatIfAnswer {
  const { usual } = kilnHours;
  if (usual === null) {
    return {
      kind: "refusal",
      sentence: kilnHours.kilnHours.tooLittle ?? "These logs hold too little for an estimate.",
    };
  }
  const read = readWhatIf(view.whatIf, usual, units);
  return read.kind === "fault"
    ? { kind: "refusal", field: read.field, sentence: read.sentence }
    : answerWhatIf(kilnHours, read.inputs, units);
}

const pages: Readonly<Record<string, Page>> = {
  [homePage.path]: {
    ...page(
      ["review", "steepGermination", "kilnHours", "yieldMoisture", "thermostat", "varieties", "changes"],
      ({ report }) => ({ name: homePage, content: <Home report={report} /> }),
    ),
    ofWholeHouse: true,
  },
  [steepGerminationPage.path]: page(["steepGermination"], ({ report }) => ({
    name: steepGerminationPage,
    content: <SteepGermination report={report} />,
  })),
  [kilnHoursPage.path]: page(["kilnHours"], ({ report, view }) => {
    const units = view.units ?? report.house.units;
    const content = (
      <KilnHours
        report={report}
        whatIf={whatIfOf(report.kilnHours, view, units)}
        answerWhatIf={(inputs) => answerWhatIf(report.kilnHours, inputs, units)}
      />
    );
    return { name: kilnHoursPage, content };
  }),
  [yieldMoisturePage.path]: page(["yieldMoisture"], ({ report }) => ({
    name: yieldMoisturePage,
    content: <YieldMoisture report={report} />,
  })),
  [thermostatPage.path]: page(["thermostat"], async ({ report, curve: curveOf, view }) => {
    const load = shownLoad(report, view.firing);
    const file = load?.readingsFile ?? null;
    const curve = file === null ? null : await curveOf(file);
    return { name: thermostatPage, content: <Thermostat report={report} load={load} curve={curve} /> };
  }),
  [varietiesPage.path]: page(["varieties"], ({ report }) => ({
    name: varietiesPage,
    content: <Varieties report={report} />,
  })),
  [changesPage.path]: page(["changes"], ({ report, view }) => ({
    name: changesPage,
    content: <Changes report={report} trial={answerTrial(report.changes.plans, view)} />,
  })),
  // What only one page needs comes with that page.
  [logsPage.path]: page([], async ({ report }) => {
    const { takenLogs } = await import("../report/ask/takenTables.ts");
    return { name: logsPage, content: <Logs report={report} taken={takenLogs} /> };
  }),
  [yourLogsPage.path]: page([], async ({ report, own }) => {
    const { YourLogs } = await import("../bodies/YourLogs.tsx");
    return { name: yourLogsPage, content: <YourLogs report={report} own={own} /> };
  }),
  [writeUpPage.path]: {
    ...page([], async ({ report, places }) => {
      const { WriteUpLive } = await import("./writeUp/WriteUpLive.tsx");
      return { name: writeUpPage, content: <WriteUpLive report={report} root={places.root} /> };
    }),
    ofWholeHouse: true,
  },
  [askLogsPage.path]: {
    ...page([], async ({ ask }) => {
      const { AskLogsLive } = await import("./askLogs/AskLogsLive.tsx");
      return { name: askLogsPage, content: <AskLogsLive ask={ask} /> };
    }),
    ofWholeHouse: true,
  },
  [runsPage.path]: page([], ({ report }) => ({ name: runsPage, content: <Runs report={report} /> })),
};

/** The page of one run, by its folder. */
function runPageOf(run: string): Page {
  return page(["kilnHours", "steepGermination"], async ({ report, curve: curveOf }) => {
    const row = report.runs.find((candidate) => candidate.run === run || runFolder(candidate.run) === run);
    if (row === undefined) return null;
    const withReadings = report.loads.flatMap(({ load, runs, readingsFile }) =>
      readingsFile !== null && runs.includes(row.run) ? [{ load, readingsFile }] : [],
    );
    const curves = new Map<string, KilnCurve>();
    for (const { load, readingsFile } of withReadings) {
      curves.set(load, await curveOf(readingsFile));
    }
    return { name: runPageName(row.run), content: <RunPage result={runPage(report, row, curves)} /> };
  });
}

/** The review of one month; null where the logs hold no such month. */
function monthPageOf(month: string): Page {
  return {
    ...page(["review"], ({ report }) =>
      shownMonth(report, month) === undefined
        ? null
        : { name: monthPageName(month), content: <MonthReview report={report} month={month} /> },
    ),
    ofWholeHouse: true,
  };
}

/** The page of one variety, by its folder; null where the house never had it. */
function varietyPageOf(folder: string): Page {
  return page(["varieties"], ({ report }) => {
    const variety = report.choices.varieties.find((name) => varietyFolder(name) === folder);
    if (variety === undefined) return null;
    return { name: varietyPageName(variety), content: <VarietyPage report={report} variety={variety} /> };
  });
}

function pageAt(path: string): Page | null {
  const known = pages[path];
  if (known !== undefined) return known;
  const month = monthAt(path);
  if (month !== null) return monthPageOf(month);
  if (path.startsWith(varietiesPage.path)) {
    return varietyPageOf(decodeURIComponent(path.slice(varietiesPage.path.length, -1)));
  }
  if (!path.startsWith(runsPage.path)) return null;
  return runPageOf(decodeURIComponent(path.slice(runsPage.path.length, -1)));
}

/** The month that a path names; null for the path of anything else. */
function monthAt(path: string): string | null {
  const month = path.split("/")[1] ?? "";
  return path === monthPath(month) ? month : null;
}

/**
 * What is asked of the report for the page at a path: a page of the whole house leaves the reader's choice of rows to the
 * other pages, and a month's own page asks for its month.
 */
export function viewAsked(path: string, view: View): View {
  if (pageAt(path)?.ofWholeHouse !== true) return view;
  const { units, sort, search } = view;
  return { ...wholeView, units, sort, search, month: monthAt(path) };
}

/** What the page at a path needs of a report besides the rows. */
export const partsAt = (path: string): readonly PartName[] => pageAt(path)?.parts ?? [];

/**
 * The body of the page at a path; null where no page stands.
 *
 * @throws {RangeError} where the report lacks what {@link partsAt} says
 */
export async function bodyOf(showing: Showing): Promise<Body | null> {
  return (await pageAt(showing.path)?.body(showing)) ?? null;
}
