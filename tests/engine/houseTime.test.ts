import fc from "fast-check";
import { IANAZone } from "luxon";
import { afterAll, beforeAll, describe, expect, test } from "vitest";
import type { LoadableDatabase } from "../../src/engine/database.ts";
import { openNodeDatabase } from "../../src/engine/node.ts";
import { quoteInstant } from "../../src/engine/quote.ts";
import { houseTime } from "../../src/engine/sql/houseTime.ts";

let database: LoadableDatabase;
beforeAll(async () => {
  database = await openNodeDatabase([]);
});
afterAll(() => database.close());

describe("house_time(t)", () => {
  test.each(["Europe/Dublin", "America/St_Johns", "Australia/Lord_Howe", "Asia/Kathmandu", "Etc/UTC"])(
    "agrees with another time-zone library in %s",
    async (timeZone) => {
      await database.query(houseTime(timeZone));
      const zone = IANAZone.create(timeZone);
      const instants = fc.sample(fc.integer({ min: Date.UTC(1990, 0, 1), max: Date.UTC(2037, 0, 1) }), {
        numRuns: 300,
        seed: 7,
      });
      const list = instants.map((instant) => `(${quoteInstant(instant)})`).join(", ");
      const { rows } = await database.ask(`SELECT house_time(t) FROM (VALUES ${list}) AS given(t)`, { mostRows: 300 });
      expect(rows.map(([local]) => local)).toEqual(instants.map((instant) => instant + zone.offset(instant) * 60_000));
    },
  );
});
