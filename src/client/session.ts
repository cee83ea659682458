import { noOwnLogs } from "../bodies/ownLogs/ownLogsState.ts";
import { yourLogsPage } from "../bodies/pageNames.ts";
import { convertWhatIf } from "../report/kilnHours/whatIfInputs.ts";
import type { HouseBrief } from "../report/report.ts";
import { formatView, parseView, type View, wholeView } from "../report/view.ts";
import type { UnitSystem } from "../units/unitSystem.ts";
import type { Ask } from "./askLogs/askCalls.ts";
import { type Control, changeView } from "./changeView.ts";
import { openDrawer } from "./drawer.ts";
import { frameShown } from "./frameShown.ts";
import type { LoadedReport } from "./loadedReport.ts";
import { openDesk } from "./ownLogs/desk.ts";
import { bodyOf, partsAt, viewAsked } from "./pageBody.tsx";
import { progressText, showProgress } from "./progressSlots.ts";
import { ownPath } from "./queryPages.ts";
import { adoptPage, shownFigures } from "./renderPage.tsx";
import { openSiteReports, type Reports } from "./reports.ts";
import { readSitePlaces, type SitePlaces } from "./sitePlaces.ts";

/**
 * The live site: one reader's view, the reports it needs and the page that shows it. It alone writes the address. It
 * starts when a control is first entered, or on an address that carries a choice; until then the built page stands.
 */
export interface Session {
  /** A control was used: the page follows, and the address with it. */
  use(control: Control): void;
  /** A control is about to be used: what it surely needs is fetched. A fault is told once it is used. */
  prepare(): void;
  /** A link within the site was followed. */
  follow(address: URL): void;
  /** The reader went back or forward, or opened an address with a choice in it. */
  showAddress(): void;
  /** A button that saves something was pressed. */
  take(button: HTMLElement): void;
  cancel(): void;
}

/** How long after a choice the address names it, ms. */
const ADDRESS_AFTER = 150;

export function startSession(main: HTMLElement): Session {
  const places: SitePlaces = readSitePlaces(main);
  const site = openSiteReports(places, (progress) => showProgress(main, progressText(progress), true));
  let view: View = parseView(new URLSearchParams(location.search));
  let shown: View = view;
  let report: LoadedReport | null = null;
  // Only the latest wish is drawn: an answer that comes after a newer question is dropped.
  let wish = 0;
  let drawing: Promise<void> = Promise.resolve();
  let adoption: Promise<void> | null = null;
  let siteHouse: HouseBrief | null = null;
  /** Ends whatever is being saved. */
  let saving = new AbortController();

  const root = new URL(places.root).pathname;
  const pagePath = (): string => (location.pathname.startsWith(root) ? location.pathname.slice(root.length) : "");

  // Before anything is followed: the page that the build put here.
  const builtPath = pagePath();
  let shownPath = builtPath;
  /** Whole pages have to be drawn: what stands is of other logs. */
  let afresh = false;
  const desk = openDesk({
    main,
    places,
    async changed() {
      if (pagePath() !== yourLogsPage.path) return;
      void draw(view);
      // A drawing that a later wish overtakes leaves the page to that one.
      let latest: Promise<void>;
      do {
        latest = drawing;
        await latest;
      } while (latest !== drawing);
    },
    otherLogs(asAddressed) {
      afresh = true;
      if (!asAddressed) {
        view = wholeView;
        history.replaceState(null, "", location.pathname);
      }
      void draw(view);
    },
  });
  const reports = (): Reports => desk.shown?.reports ?? site;
  const houseUnits = (): UnitSystem => desk.shown?.rows.house.units ?? places.units;
  const drawer = openDrawer(main, builtPath);
  /** One for as long as the session lasts, whichever logs it comes to: a page that holds a question keeps it. */
  const ask: Ask = (sql, options) =>
    reports()
      .ask(sql, options)
      .finally(() => showProgress(main, "", false));

  /** Once: taking over a page a second time would double it. What could not be fetched may be tried again. */
  const adopt = (): Promise<void> => {
    adoption ??= (async () => {
      for await (const built of site.of(wholeView, partsAt(builtPath))) {
        siteHouse = built.house;
        const about = { places, ask, curve: site.curve, own: noOwnLogs, logs: "site" } as const;
        const showing = { ...about, path: builtPath, report: built, view: wholeView };
        adoptPage(main, await bodyOf(showing), showing);
      }
    })().catch((error: unknown) => {
      adoption = null;
      throw error;
    });
    return adoption;
  };

  /** @returns whether it was still wished for when it had been put together */
  const show = async (path: string, next: View, found: LoadedReport, mine: number): Promise<boolean> => {
    const logs = desk.shown === null ? "site" : "own";
    const from = { curve: reports().curve, ask, own: desk.state, logs } as const;
    const showing = { path, report: found, view: next, places, ...from };
    const body = await bodyOf(showing);
    if (mine !== wish) return false;
    drawer.draw(body, showing, afresh);
    afresh = false;
    return true;
  };

  const draw = (next: View): Promise<void> => {
    drawing = drawWished(next);
    return drawing;
  };

  const drawWished = async (next: View): Promise<void> => {
    wish += 1;
    const mine = wish;
    const address = pagePath();
    const path = ownPath(address, next);
    const source = reports();
    try {
      const asked = viewAsked(path, next);
      if (source.startsEngine(asked)) showProgress(main, "Starting the engine", true);
      await adopt();
      let answered = false;
      for await (const found of source.of(asked, partsAt(path))) {
        // What comes later must not keep the answer from being seen.
        if (answered) await frameShown();
        answered = true;
        if (mine !== wish || !(await show(path, next, found, mine))) return;
        report = found;
        shown = next;
        shownPath = address;
        showProgress(main, "", false);
      }
    } catch (error) {
      if (mine !== wish) return;
      const why = error instanceof Error ? error.message : String(error);
      const text = why === "cancelled" ? "Cancelled; the page is as it was." : `That could not be shown: ${why}.`;
      view = shown;
      history.replaceState(null, "", `${root}${shownPath}${formatView(shown)}`);
      if (report !== null) await show(ownPath(shownPath, shown), shown, report, mine);
      showProgress(main, text, false);
    }
  };

  return {
    use(control) {
      const before = view.units ?? houseUnits();
      view = changeView(view, control);
      const now = view.units ?? houseUnits();
      if (now !== before) view = { ...view, whatIf: convertWhatIf(view.whatIf, before, now) };
      void draw(view);
      // The answer is drawn first, where it comes soon: a browser takes some milliseconds to write an address.
      setTimeout(() => history.replaceState(null, "", `${location.pathname}${formatView(view)}`), ADDRESS_AFTER);
    },
    prepare() {
      void adopt().catch(() => {});
    },
    follow(address) {
      view = parseView(address.searchParams);
      history.pushState(null, "", address);
      void draw(view).then(() => {
        if (address.hash === "") scrollTo({ top: 0 });
        else document.getElementById(address.hash.slice(1))?.scrollIntoView();
        main.focus({ preventScroll: true });
      });
    },
    showAddress() {
      view = parseView(new URLSearchParams(location.search));
      void draw(view);
    },
    take(button) {
      const { signal } = saving;
      void (async () => {
        // A figure is saved from what it was drawn from, which only a page that has been taken over knows.
        const [{ takeAway }] = await Promise.all([import("./takeAway/takeAway.ts"), adopt()]);
        const house = desk.shown?.rows.house ?? siteHouse;
        if (house === null) return;
        await takeAway(button, { main, source: reports(), figures: shownFigures, house, signal });
      })().catch((error: unknown) => showProgress(main, `That could not be saved: ${String(error)}`, false));
    },
    cancel() {
      saving.abort(new Error("cancelled"));
      saving = new AbortController();
      if (!desk.cancel()) reports().cancel();
    },
  };
}
