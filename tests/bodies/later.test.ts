// @vitest-environment jsdom
import { type ComponentChildren, h, render } from "preact";
import { beforeEach, describe, expect, it } from "vitest";
import { type BodyContext, BodyProvider, type Place, useBody } from "../../src/bodies/context.ts";
import { Entry } from "../../src/bodies/Entry.tsx";
import { Figure } from "../../src/bodies/Figure.tsx";
import type { FigureSpec } from "../../src/figures/figureSpec.ts";
import { wholeView } from "../../src/report/view.ts";
import { madeUpReport } from "../support/madeUpReport.ts";

const { house } = madeUpReport(20);
const contextWith = (waiting: readonly Place[], units: "metric" | "us" = "metric"): BodyContext => ({
  house,
  view: { ...wholeView, units },
  document,
  hrefTo: (path) => `/${path}`,
  built: false,
  waits: (place) => waiting.includes(place),
});

let main: HTMLElement;
beforeEach(() => {
  main = document.createElement("main");
});

function draw(body: ComponentChildren, waiting: readonly Place[] = [], units?: "metric" | "us"): string {
  render(h(BodyProvider, { value: contextWith(waiting, units) }, body), main);
  return main.textContent ?? "";
}

const Units = () => h("i", null, useBody().view.units);
const entry = (text: string) => h(Entry, { id: "energy", title: "Energy", children: [text, " ", h(Units, null)] });

/** Counts how often each form is drawn. */
function figure(title: string): { readonly spec: FigureSpec; readonly drawn: number[] } {
  const drawn: number[] = [];
  const spec: FigureSpec = {
    id: "hours",
    title,
    summary: title,
    table: { columns: [{ label: "hours", numeric: true }], rows: [[title]] },
    wideWidth: 500,
    narrowWidth: 340,
    printAs: "wide",
    options: ({ width }) => {
      drawn.push(width);
      return { height: 100, marks: [] };
    },
  };
  return { spec, drawn };
}

describe("a part of a page that waits", () => {
  it("stays as it was drawn, with the units it was drawn in, until it no longer waits", () => {
    expect(draw(entry("one"))).toBe("Energyone metric");
    expect(draw(entry("two"), ["entry energy"], "us")).toBe("Energyone metric");
    expect(draw(entry("three"), [], "us")).toBe("Energythree us");
  });

  it("is drawn all the same where nothing of it stands yet", () => {
    expect(draw(entry("one"), ["entry energy"])).toBe("Energyone metric");
  });

  it("lets a figure draw the form that shows and leave the other, and its numbers, for later", () => {
    const [one, two] = [figure("one"), figure("two")];
    draw(h(Figure, { spec: one.spec }));
    expect(one.drawn).toEqual([500, 340]);
    const text = draw(h(Figure, { spec: two.spec }), ["drawing hours-narrow", "numbers hours"]);
    expect(two.drawn).toEqual([500]);
    expect(main.querySelector(".drawing-wide title")?.textContent).toBe("two");
    expect(main.querySelector(".drawing-narrow title")?.textContent).toBe("one");
    expect(text).toContain("The numbersone");
    draw(h(Figure, { spec: two.spec }));
    expect(two.drawn).toEqual([500, 340]);
    expect(main.querySelector(".drawing-narrow title")?.textContent).toBe("two");
  });

  it("draws a figure again only when it is another", () => {
    const { spec, drawn } = figure("one");
    draw(h(Figure, { spec }));
    draw(h(Figure, { spec }), [], "us");
    expect(drawn).toEqual([500, 340]);
  });
});
