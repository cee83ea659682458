import { readFileSync } from "node:fs";
import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { readHouse } from "../../src/tables/readHouse.ts";

const rulesOf = (source: string | null) =>
  readHouse(source).problems.map(({ rule, line, column }) => ({ rule, line, column }));

describe("readHouse", () => {
  test("fills in every default where there is no file, and says so", () => {
    const { house, problems } = readHouse(null);
    expect(house).toMatchObject({
      name: "Malthouse",
      timeZone: "UTC",
      units: "metric",
      dateOrder: "ymd",
      altitudeMetres: 0,
      kilns: [],
    });
    expect(problems).toMatchObject([{ rule: "house-missing", effect: "note" }]);
  });

  test("reads every setting of the format", () => {
    const { house, problems } = readHouse(`
name = "House"
time_zone = "Pacific/Auckland"
units = "us"
date_order = "dmy"
altitude_m = 120
[[kilns]]
id = "K1"
floor_m2 = 6.5
heater_kw = 24
fan_m3_h = 4000
probe_at_bulb = true
[[kilns]]
id = "K2"
[tolerances]
thermostat_c = 1.5
final_moisture_pct = 0.4
[costs]
currency = "NZD"
kwh = 0.3
labour_hour = 30
malt_kg = 2
refused_batch = 900
[files."kilning.csv"]
encoding = "windows-1252"
delimiter = ";"
decimal = ","
date_order = "mdy"
[files."readings/"]
delimiter = "tab"
[baselines]
wheat = ["001", "002"]
[checks]
logger_days = 30
[shared]
contact = "office"
note = "cool"
show_growers = true
`);
    expect(problems).toEqual([]);
    expect(house).toEqual({
      name: "House",
      timeZone: "Pacific/Auckland",
      units: "us",
      dateOrder: "dmy",
      altitudeMetres: 120,
      kilns: [
        { id: "K1", floorSquareMetres: 6.5, heaterKilowatts: 24, fanCubicMetresPerHour: 4000, probeAtBulb: true },
        { id: "K2", floorSquareMetres: null, heaterKilowatts: null, fanCubicMetresPerHour: null, probeAtBulb: false },
      ],
      tolerances: { thermostatCelsius: 1.5, measures: { final_moisture_pct: 0.4 } },
      costs: { currency: "NZD", perKilowattHour: 0.3, perLabourHour: 30, perKilogramMalt: 2, perRefusedBatch: 900 },
      files: new Map([
        ["kilning.csv", { encoding: "windows-1252", delimiter: ";", decimal: ",", dateOrder: "mdy" }],
        ["readings/", { encoding: null, delimiter: "\t", decimal: null, dateOrder: null }],
      ]),
      baselines: [{ variety: "wheat", runs: ["001", "002"], from: null, to: null }],
      checks: { loggerDays: 30 },
      shared: { contact: "office", note: "cool", showGrowers: true },
    });
  });

  test.each([
    ['nmae = "x"', [{ rule: "unknown-setting", line: 1, column: "nmae" }]],
    ["\nname = 5", [{ rule: "setting-type", line: 2, column: "name" }]],
    ['units = "imperial"', [{ rule: "setting-type", line: 1, column: "units" }]],
    ['time_zone = "Europe/Nowhere"', [{ rule: "setting-refused", line: 1, column: "time_zone" }]],
    ["altitude_m = 99999", [{ rule: "setting-type", line: 1, column: "altitude_m" }]],
    ["[[kilns]]\nfloor_m2 = 3", [{ rule: "setting-refused", line: null, column: "kilns.id" }]],
    ['[[kilns]]\nid = "A"\n[[kilns]]\nid = "A"', [{ rule: "setting-refused", line: 2, column: "kilns.id" }]],
    ["[costs]\npower = 3", [{ rule: "unknown-setting", line: 2, column: "costs.power" }]],
    ['[files."a.csv"]\nencoding = "klingon"', [{ rule: "setting-refused", line: 2, column: "files.a.csv.encoding" }]],
    ['[files."a.csv"]\ndelimiter = ";;"', [{ rule: "setting-refused", line: 2, column: "files.a.csv.delimiter" }]],
    ["costs = 3", [{ rule: "setting-type", line: 1, column: "costs" }]],
  ])("reports %j", (source, expected) => {
    expect(rulesOf(source)).toEqual(expected);
  });

  test("reports text that is not TOML with its line, and keeps the defaults", () => {
    const { house, problems } = readHouse('name = "x"\nunits = metric\n');
    expect(problems).toMatchObject([{ rule: "house-unreadable", line: 2, effect: "file-set-aside" }]);
    expect(house.units).toBe("metric");
  });

  test("never throws, whatever the file holds", () => {
    const key = fc.constantFrom("name", "time_zone", "kilns", "files", "costs", "tolerances", "shared", "units", "x");
    const value = fc.constantFrom(
      "1",
      '"a"',
      "[]",
      "{}",
      "true",
      "[{}]",
      "1979-05-27",
      "nan",
      "{ a = { b = 1 } }",
      '[1, "x"]',
    );
    fc.assert(
      fc.property(fc.array(fc.tuple(key, value), { maxLength: 6 }), (pairs) => {
        const { house } = readHouse(pairs.map(([k, v]) => `${k} = ${v}`).join("\n"));
        expect(house.timeZone).toBe("UTC");
      }),
    );
    fc.assert(
      fc.property(fc.string(), (text) => {
        expect(readHouse(text).house.units).toBe("metric");
      }),
    );
  });
});

describe("data/templates/house.toml", () => {
  const template = readFileSync("data/templates/house.toml", "utf8");

  test("is read without a word", () => {
    expect(readHouse(template).problems).toEqual([]);
  });

  test("names settings that the reader knows, once its examples are taken out of comment", () => {
    const opened = template.replaceAll(/^# (?=\[|[a-z_0-9]+ = )/gm, "");
    expect(readHouse(opened).problems).toEqual([]);
    expect(opened.match(/^[a-z_0-9]+ = /gm)?.length).toBeGreaterThan(20);
  });
});
