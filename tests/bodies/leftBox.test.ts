// @vitest-environment jsdom
import { h, render } from "preact";
import { beforeEach, describe, expect, it } from "vitest";
import { LeftBox } from "../../src/bodies/LeftBox.tsx";

let page: HTMLElement;
let taken: string[];
beforeEach(() => {
  page = document.createElement("main");
  taken = [];
});

function draw(value: string): HTMLInputElement {
  render(h(LeftBox, { id: "box", type: "text", value, taken: (text) => taken.push(text) }), page);
  const box = page.querySelector("input");
  if (box === null) throw new Error("no box was drawn");
  return box;
}

function type(box: HTMLInputElement, text: string): void {
  box.value = text;
  box.dispatchEvent(new Event("input"));
}

describe("a box that counts when it is left", () => {
  it("keeps what is being typed while the page is drawn again", () => {
    type(draw("old"), "26-3");
    expect(draw("old").value).toBe("26-3");
    expect(taken).toEqual([]);
  });

  it("hands on what was typed once, when it is left", () => {
    const box = draw("old");
    type(box, "26-302");
    box.dispatchEvent(new Event("change"));
    expect(taken).toEqual(["26-302"]);
  });

  it("shows what the page made of it afterwards", async () => {
    const box = draw("old");
    type(box, " 26-302 ");
    box.dispatchEvent(new Event("change"));
    await Promise.resolve();
    expect(draw("26-302").value).toBe("26-302");
  });

  it("shows the old value again where the page did not take it", async () => {
    const box = draw("7");
    type(box, "minus three");
    box.dispatchEvent(new Event("change"));
    await Promise.resolve();
    expect(draw("7").value).toBe("7");
  });
});
