// @vitest-environment jsdom
import { h } from "preact";
import { afterEach, beforeEach, describe, expect, it, vi } from "vitest";
import { Entry } from "../../src/bodies/Entry.tsx";
import { noOwnLogs } from "../../src/bodies/ownLogs/ownLogsState.ts";
import { logsPage } from "../../src/bodies/pageNames.ts";
import { RowGroups } from "../../src/bodies/RowGroups.tsx";
import { openDrawer } from "../../src/client/drawer.ts";
import type { Body, Showing } from "../../src/client/pageBody.tsx";
import { wholeView } from "../../src/report/view.ts";
import { madeUpReport } from "../support/madeUpReport.ts";

const NAMES = ["first", "second", "third"] as const;

const showing: Showing = {
  path: logsPage.path,
  report: madeUpReport(20),
  view: wholeView,
  places: { root: "http://localhost/" } as Showing["places"],
  curve: () => Promise.reject(new Error("no curve is asked for")),
  ask: () => Promise.reject(new Error("nothing is asked")),
  own: noOwnLogs,
  logs: "site",
};

const bodyOf = (text: string): Body => ({
  name: logsPage,
  content: h(
    "div",
    null,
    NAMES.map((id) => h(Entry, { id, title: id, children: text })),
  ),
});

/** What the browser was asked to do when it is idle, and does when the test lets it. */
let idle: (() => void)[] = [];
const settle = (): Promise<void> => new Promise((done) => setTimeout(done, 5));

let main: HTMLElement;
const told = (): readonly string[] =>
  NAMES.map((id) => main.querySelector(`#${id} .entry-body`)?.textContent ?? "nothing");

beforeEach(() => {
  idle = [];
  main = document.createElement("main");
  document.body.append(main);
  // A window in which only the first entry shows; jsdom lays nothing out.
  Object.assign(HTMLElement.prototype, { checkVisibility: () => true });
  vi.spyOn(HTMLElement.prototype, "getBoundingClientRect").mockImplementation(function (this: HTMLElement) {
    const shows = this.id === "first" || this.dataset.rows?.endsWith("-0") === true;
    return { top: shows ? 0 : 5000, bottom: shows ? 100 : 5100 } as DOMRect;
  });
  const plenty = { didTimeout: false, timeRemaining: () => 50 };
  vi.stubGlobal("requestIdleCallback", (work: IdleRequestCallback) => idle.push(() => work(plenty)));
  vi.stubGlobal("cancelIdleCallback", () => {});
});
afterEach(() => {
  main.remove();
  Reflect.deleteProperty(HTMLElement.prototype, "checkVisibility");
  vi.restoreAllMocks();
  vi.unstubAllGlobals();
});

describe("openDrawer(main, builtPath)", () => {
  it("draws at once what shows, and every other part once the browser is idle", async () => {
    const drawer = openDrawer(main, "elsewhere/");
    drawer.draw(bodyOf("old"), showing);
    expect(told()).toEqual(["old", "old", "old"]);
    drawer.draw(bodyOf("new"), showing);
    await settle();
    expect(told()).toEqual(["new", "old", "old"]);
    for (let turn = idle.shift(); turn !== undefined; turn = idle.shift()) {
      turn();
      await settle();
    }
    expect(told()).toEqual(["new", "new", "new"]);
  });

  it("draws of a long table at once the rows that show, and the others later", async () => {
    const tableOf = (text: string): Body => ({
      name: logsPage,
      content: h(Entry, {
        id: "first",
        title: "first",
        children: h(
          "table",
          null,
          h(RowGroups<number>, {
            id: "many",
            rows: Array.from({ length: 60 }, (_, i) => i),
            row: (i) => h("tr", { key: i }, h("td", null, `${text} ${i}`)),
          }),
        ),
      }),
    });
    const cells = (): readonly string[] => [...main.querySelectorAll("td")].map(({ textContent }) => textContent ?? "");
    const drawer = openDrawer(main, "elsewhere/");
    drawer.draw(tableOf("old"), showing);
    drawer.draw(tableOf("new"), showing);
    await settle();
    expect(cells()).toHaveLength(60);
    expect(cells().filter((cell) => cell.startsWith("new"))).toHaveLength(25);
    for (let turn = idle.shift(); turn !== undefined; turn = idle.shift()) {
      turn();
      await settle();
    }
    expect(cells()).toEqual(Array.from({ length: 60 }, (_, i) => `new ${i}`));
  });

  it("draws every part that waits before it is printed", async () => {
    const drawer = openDrawer(main, "elsewhere/");
    drawer.draw(bodyOf("old"), showing);
    drawer.draw(bodyOf("new"), showing);
    dispatchEvent(new Event("beforeprint"));
    await settle();
    expect(told()).toEqual(["new", "new", "new"]);
  });
});
