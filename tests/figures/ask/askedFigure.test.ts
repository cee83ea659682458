import { JSDOM } from "jsdom";
import { describe, expect, test } from "vitest";
import { askedTable } from "../../../src/figures/ask/askedCells.ts";
import { askedFigure } from "../../../src/figures/ask/askedFigure.ts";
import { renderFigure } from "../../../src/figures/renderFigure.ts";
import type { AskedAnswer, AskedKind, AskedValue } from "../../../src/tables/askedAnswer.ts";

const { document } = new JSDOM("").window;

function answer(kinds: Readonly<Record<string, AskedKind>>, rows: readonly (readonly AskedValue[])[]): AskedAnswer {
  return { columns: Object.entries(kinds).map(([name, kind]) => ({ name, kind })), rows, more: false };
}

function drawn(asked: AskedAnswer, width = 1040): Element {
  const spec = askedFigure(asked);
  if (spec === null) throw new Error("nothing was drawn");
  return new JSDOM(renderFigure(spec, { document, width, idPrefix: "asked" })).window.document.body;
}

const byVariety = answer({ variety: "text", hours: "number" }, [
  ["Alva", 20],
  ["Brunolt", 10],
  ["Corra", 0],
]);

describe("askedFigure(answer)", () => {
  test.each([340, 1040])(
    "draws text against a number as bars in its order, as long as their numbers, at %i px",
    (width) => {
      const bars = [...drawn(byVariety, width).querySelectorAll("rect.mark-ink")];
      const lengths = bars.map((bar) => Number(bar.getAttribute("width")));
      expect(lengths).toHaveLength(3);
      expect(lengths[0]).toAgreeWithin(2 * (lengths[1] ?? 0), 1e-9);
    },
  );

  test("draws bars below nought to the left of it", () => {
    const body = drawn(
      answer({ name: "text", change: "number" }, [
        ["up", 5],
        ["down", -5],
      ]),
    );
    const [up, down] = [...body.querySelectorAll("rect.mark-ink")].map((bar) => ({
      x: Number(bar.getAttribute("x")),
      width: Number(bar.getAttribute("width")),
    }));
    expect((down?.x ?? 0) + (down?.width ?? 0)).toAgreeWithin(up?.x ?? 0, 1e-9);
  });

  test("draws a date against a number as dots in time, and says the ends in words", () => {
    const months = answer(
      { month: "date", kg: "number" },
      [0, 1, 2, 3].map((m) => [Date.UTC(2026, m, 1), 100 + m]),
    );
    const spec = askedFigure(months);
    expect(spec?.summary).toBe("4 rows: kg from 100 (2026-01-01) to 103 (2026-04-01).");
    expect(drawn(months).querySelectorAll("circle")).toHaveLength(4);
  });

  test("leaves out rows without a value, and says how many", () => {
    const spec = askedFigure(
      answer({ a: "number", b: "number" }, [
        [1, 2],
        [2, null],
        [3, 4],
      ]),
    );
    expect(spec?.summary).toContain("1 without a value is left out");
  });

  test("draws many dots as one path", () => {
    const many = answer(
      { a: "number", b: "number" },
      Array.from({ length: 2000 }, (_, i) => [i, i % 7]),
    );
    expect(drawn(many).querySelectorAll("circle")).toHaveLength(0);
    expect(drawn(many).querySelectorAll(".dense path")).toHaveLength(1);
  });

  test("draws equal values and equal places all the same", () => {
    expect(
      drawn(
        answer({ a: "number", b: "number" }, [
          [5, 3],
          [5, 3],
        ]),
      ).querySelectorAll("circle"),
    ).toHaveLength(2);
  });

  test("draws nothing of one row, of text alone, or of more bars than a picture holds", () => {
    expect(askedFigure(answer({ a: "text", b: "number" }, [["x", 1]]))).toBeNull();
    expect(
      askedFigure(
        answer({ a: "text", b: "text" }, [
          ["x", "y"],
          ["z", "w"],
        ]),
      ),
    ).toBeNull();
    expect(
      askedFigure(
        answer(
          { a: "text", b: "number" },
          Array.from({ length: 41 }, (_, i) => [`r${i}`, i]),
        ),
      ),
    ).toBeNull();
  });
});

describe("askedTable(answer)", () => {
  test("prints one count of decimals a column, a year without a gap, nothing for null", () => {
    const { rows } = askedTable(
      answer({ run: "text", hours: "number", crop_year: "number", slow: "flag", at: "instant" }, [
        ["a", 20.123_45, 2025, true, Date.UTC(2026, 2, 8, 6, 30)],
        ["b", null, 2026, false, null],
      ]),
    );
    expect(rows).toEqual([
      ["a", "20.12", "2025", "yes", "2026-03-08 06:30"],
      ["b", "", "2026", "no", ""],
    ]);
  });

  test("lists the first 200 rows and says of how many", () => {
    const many = {
      ...answer(
        { n: "number" },
        Array.from({ length: 250 }, (_, i) => [i]),
      ),
      more: true,
    };
    expect(askedTable(many).rows).toHaveLength(200);
    expect(askedTable(many).note).toBe("The first 200 of 250 rows, and the answer has more.");
  });
});
