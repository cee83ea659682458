import { keepsLogs } from "./ownLogs/keptMark.ts";
import type { Session } from "./session.ts";
import { offerSaving } from "./takeAway/offerSaving.ts";

// The small script on every page. It waits until a control is entered and only then fetches what makes the page live.

const main = document.getElementById("body");

/** The heart of the site weighs far more than this listener, so it comes with the first wish for it. */
let session: Promise<Session> | null = null;
const live = (body: HTMLElement): Promise<Session> => {
  session ??= import("./session.ts").then(({ startSession }) => startSession(body));
  return session;
};

type Field = HTMLInputElement | HTMLSelectElement;

function controlOf(target: EventTarget | null): Field | null {
  return target instanceof HTMLElement ? target.closest<Field>("[data-control]") : null;
}

function useField(body: HTMLElement, field: Field): void {
  const name = field.dataset.control;
  if (name === undefined) return;
  const checked = field instanceof HTMLInputElement && field.type === "checkbox" ? field.checked : true;
  const { value } = field;
  void live(body).then((opened) => opened.use({ name, value, checked }));
}

/** Does this click stay within the site and in this tab? */
function linkWithin(event: MouseEvent): URL | null {
  if (event.defaultPrevented || event.button !== 0 || event.metaKey || event.ctrlKey || event.shiftKey || event.altKey)
    return null;
  const link = event.target instanceof Element ? event.target.closest<HTMLAnchorElement>("a[href]") : null;
  if (link === null || link.target !== "" || link.hasAttribute("download") || link.origin !== location.origin)
    return null;
  // Only the build can make such a page; while the reader's own logs are shown, loading it would take them away.
  if (link.dataset.still !== undefined && document.getElementById("whose")?.hidden !== false) return null;
  const address = new URL(link.href);
  const samePage = address.pathname === location.pathname && address.search === location.search;
  return samePage && address.hash !== "" ? null : address;
}

if (main !== null && main.dataset.still === undefined) {
  // Text fields answer as they are typed in; dates, lists and ticks when they are changed.
  main.addEventListener("input", (event) => {
    const field = controlOf(event.target);
    if (
      field instanceof HTMLInputElement &&
      (field.type === "text" || field.type === "search" || field.type === "time")
    )
      useField(main, field);
  });
  main.addEventListener("change", (event) => {
    const field = controlOf(event.target);
    const typed =
      field instanceof HTMLInputElement && (field.type === "text" || field.type === "search" || field.type === "time");
    if (field !== null && !typed) useField(main, field);
  });
  // Between entering a field and using it there is time to fetch what answers it; the engine waits for the use itself.
  main.addEventListener("focusin", (event) => {
    if (controlOf(event.target) !== null) void live(main).then((opened) => opened.prepare());
  });
  main.addEventListener("submit", (event) => {
    if (event.target instanceof HTMLFormElement && event.target.dataset.form !== undefined) event.preventDefault();
  });
  document.addEventListener("click", (event) => {
    if (event.target instanceof Element && event.target.closest('[data-action="cancel"]')) {
      void session?.then((opened) => opened.cancel());
      return;
    }
    const saving = event.target instanceof Element ? event.target.closest<HTMLElement>("button[data-take]") : null;
    if (saving !== null) {
      void live(main).then((opened) => opened.take(saving));
      return;
    }
    const address = linkWithin(event);
    // A link that carries a choice needs the live site; any other is followed in place only once the site is live.
    if (address === null || (session === null && address.search === "")) return;
    event.preventDefault();
    void live(main).then((opened) => opened.follow(address));
  });
  addEventListener("popstate", () => {
    void live(main).then((opened) => opened.showAddress());
  });
  offerSaving(main);
  // Some pages have nothing that works without the session, and logs that are kept come back on every page.
  const needsSession = main.querySelector("[data-own], [data-wakes]") !== null;
  if (location.search !== "" || needsSession || keepsLogs()) void live(main).then((opened) => opened.showAddress());
}
