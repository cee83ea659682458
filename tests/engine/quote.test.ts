import fc from "fast-check";
import { afterAll, beforeAll, describe, expect, test } from "vitest";
import type { LoadableDatabase } from "../../src/engine/database.ts";
import { openNodeDatabase } from "../../src/engine/node.ts";
import { quoteInstant, quoteName, quoteText } from "../../src/engine/quote.ts";

let database: LoadableDatabase;
beforeAll(async () => {
  database = await openNodeDatabase([]);
});
afterAll(() => database.close());

describe("quoteText", () => {
  test("gives back any text through the engine as it was", async () => {
    const text = fc.string({ unit: "grapheme", maxLength: 40 }).filter((value) => !value.includes("\0"));
    const hostile = fc.constantFrom("'", "''", "\\'", "'; DROP TABLE x; --", '"', "$$", "\n", "%", "É\u2028");
    await fc.assert(
      fc.asyncProperty(
        fc.oneof(
          text,
          fc.array(hostile).map((parts) => parts.join("")),
        ),
        async (value) => {
          expect(await database.query(`SELECT ${quoteText(value)} AS value`)).toEqual([{ value }]);
        },
      ),
      { numRuns: 200 },
    );
  });

  test("refuses a zero byte, at which the engine would stop reading", () => {
    expect(() => quoteText("a\0'b")).toThrow(RangeError);
  });
});

describe("quoteInstant", () => {
  test("gives back any millisecond of the years 1 to 9999 through the engine", async () => {
    const instants = fc.integer({
      min: Date.parse("0001-01-01T00:00:00Z"),
      max: Date.parse("9999-12-31T23:59:59.999Z"),
    });
    await fc.assert(
      fc.asyncProperty(instants, async (value) => {
        expect(await database.query(`SELECT ${quoteInstant(value)} AS value`)).toEqual([{ value }]);
      }),
      { numRuns: 200 },
    );
  });

  test.for([Number.NaN, Number.POSITIVE_INFINITY, 8.65e15, Date.parse("+010000-01-01T00:00:00Z")])(
    "refuses %s",
    (instant) => {
      expect(() => quoteInstant(instant)).toThrow(RangeError);
    },
  );
});

describe("quoteName", () => {
  test("takes a plain name, reserved words too", async () => {
    expect(await database.query(`SELECT 1 AS ${quoteName("order")}`)).toEqual([{ order: 1 }]);
  });

  test.for(["", "a b", 'a"b', "A", "1a", "é"])("refuses %j", (name) => {
    expect(() => quoteName(name)).toThrow(RangeError);
  });
});
