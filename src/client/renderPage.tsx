import { hydrate, render } from "preact";
import { BodyProvider } from "../bodies/context.ts";
import { Home } from "../bodies/Home.tsx";
import { KilnHours } from "../bodies/KilnHours.tsx";
import { Logs } from "../bodies/Logs.tsx";
import {
  homePage,
  kilnHoursPage,
  logsPage,
  type PageName,
  runPageName,
  runsPage,
  thermostatPage,
  yieldMoisturePage,
} from "../bodies/pageNames.ts";
import { RunPage } from "../bodies/RunPage.tsx";
import { Runs } from "../bodies/Runs.tsx";
import { Thermostat } from "../bodies/Thermostat.tsx";
import { shownLoad } from "../bodies/thermostat/shownLoad.ts";
import { YieldMoisture } from "../bodies/YieldMoisture.tsx";
import { answerWhatIf } from "../report/kilnHours/whatIf.ts";
import { readWhatIf } from "../report/kilnHours/whatIfInputs.ts";
import { parseLoadReadings } from "../report/loadCurve.ts";
import type { Report } from "../report/report.ts";
import { runPage } from "../report/runPage.ts";
import type { KilnCurve } from "../report/runPageResult.ts";
import { formatView, type View, wholeView } from "../report/view.ts";
import type { WhatIfAnswer } from "../report/whatIfAnswer.ts";
import { runFolder } from "../units/runPath.ts";
import type { UnitSystem } from "../units/unitSystem.ts";
import type { SitePlaces } from "./sitePlaces.ts";

export interface Showing {
  /** Path from the site's root: `kiln-hours/`. */
  readonly path: string;
  readonly report: Report;
  readonly view: View;
  readonly places: SitePlaces;
}

interface Body {
  readonly name: PageName;
  readonly content: preact.ComponentChild;
}

/** The part of a view that goes along from page to page; what a page alone asked for stays behind. */
const carried = ({ from, to, variety, kiln, without, units, air, rules, apart }: View): View => ({
  ...wholeView,
  from,
  to,
  variety,
  kiln,
  without,
  units,
  air,
  rules,
  apart,
});

function whatIfOf({ kilnHours }: Report, view: View, units: UnitSystem): WhatIfAnswer {
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

let addressed: { readonly root: string; readonly query: string; readonly hrefTo: (path: string) => string } | null =
  null;

/** One function for as long as the choice it carries stays, so that what was drawn with it need not be drawn again. */
function addressing(root: string, query: string): (path: string) => string {
  if (addressed?.root !== root || addressed.query !== query) {
    addressed = { root, query, hrefTo: (path) => `${root}${path}${query}` };
  }
  return addressed.hrefTo;
}

const curvesKept = new Map<string, Promise<KilnCurve>>();

function fetchCurve(address: string): Promise<KilnCurve> {
  const fetched =
    curvesKept.get(address) ??
    fetch(address).then(async (response) => {
      if (!response.ok) throw new Error(`the readings could not be fetched (${response.status})`);
      return parseLoadReadings(await response.text());
    });
  curvesKept.set(address, fetched);
  return fetched;
}

async function runBody(run: string, { report, places }: Showing): Promise<Body | null> {
  const row = report.runs.find((candidate) => candidate.run === run || runFolder(candidate.run) === run);
  if (row === undefined) return null;
  const curves = new Map<string, KilnCurve>();
  for (const { load, runs, readingsFile } of report.loads) {
    if (readingsFile !== null && runs.includes(row.run))
      curves.set(load, await fetchCurve(places.tables + readingsFile));
  }
  return { name: runPageName(row.run), content: <RunPage result={runPage(report, row, curves)} /> };
}

async function thermostatBody({ report, view, places }: Showing): Promise<Body> {
  const load = shownLoad(report, view.firing);
  const file = load?.readingsFile ?? null;
  const curve = file === null ? null : await fetchCurve(places.tables + file);
  return { name: thermostatPage, content: <Thermostat report={report} load={load} curve={curve} /> };
}

async function bodyOf(showing: Showing): Promise<Body | null> {
  const { path, report, view } = showing;
  const units = view.units ?? report.house.units;
  if (path === homePage.path) return { name: homePage, content: <Home report={report} /> };
  if (path === kilnHoursPage.path) {
    const content = (
      <KilnHours
        report={report}
        whatIf={whatIfOf(report, view, units)}
        answerWhatIf={(inputs) => answerWhatIf(report.kilnHours, inputs, units)}
      />
    );
    return { name: kilnHoursPage, content };
  }
  if (path === yieldMoisturePage.path) return { name: yieldMoisturePage, content: <YieldMoisture report={report} /> };
  if (path === thermostatPage.path) return thermostatBody(showing);
  if (path === logsPage.path) return { name: logsPage, content: <Logs report={report} /> };
  if (path === runsPage.path && view.run === null) return { name: runsPage, content: <Runs report={report} /> };
  if (path.startsWith(runsPage.path))
    return runBody(view.run ?? decodeURIComponent(path.slice(runsPage.path.length, -1)), showing);
  return null;
}

/** The navigation stands outside the body and is not drawn anew: marks where the reader is and lets the choice go along. */
function markNavigation(root: string, path: string, query: string): void {
  const here = new URL(path.startsWith(runsPage.path) ? runsPage.path : path, root).pathname;
  for (const link of document.querySelectorAll<HTMLAnchorElement>("header a[href]")) {
    if (link.pathname === here) link.setAttribute("aria-current", "page");
    else link.removeAttribute("aria-current");
    link.search = query;
  }
}

/**
 * Takes over the page as it was built, so that later redraws change what differs and leave the rest: an opened fold, a
 * field in use. Preact cannot do that with markup that it would draw otherwise.
 */
export async function adoptPage(main: HTMLElement, path: string, built: Report, places: SitePlaces): Promise<void> {
  const body = await bodyOf({ path, report: built, view: wholeView, places });
  if (body === null) {
    main.replaceChildren();
    return;
  }
  const root = new URL(places.root).pathname;
  const context = { house: built.house, view: wholeView, document, hrefTo: addressing(root, ""), built: false };
  hydrate(<BodyProvider value={context}>{body.content}</BodyProvider>, main);
}

/** Draws a page's body: the same components that the build rendered. */
export async function renderPage(main: HTMLElement, showing: Showing): Promise<void> {
  const { path, report, view, places } = showing;
  const body = await bodyOf(showing);
  if (body === null) {
    render(<p>No page stands here for this choice of batches.</p>, main);
    return;
  }
  const root = new URL(places.root).pathname;
  const query = formatView(carried(view));
  const context = { house: report.house, view, document, hrefTo: addressing(root, query), built: false };
  document.title = body.name.path === "" ? report.house.name : `${body.name.title} · ${report.house.name}`;
  markNavigation(places.root, path, query);
  render(<BodyProvider value={context}>{body.content}</BodyProvider>, main);
}
