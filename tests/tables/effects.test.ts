import { describe, expect, test } from "vitest";
import { type FileTexts, logsOf, valuesOf } from "./logsOf.ts";

const read = async (path: string, text: string, others: FileTexts = {}) => {
  const logs = await logsOf({ ...others, [path]: text });
  return { logs, file: logs.files.find((file) => file.path === path) };
};

describe("readLogs acts on what it reports:", () => {
  test("a blanked value is gone from the table, the row stays", async () => {
    const { logs, file } = await read(
      "kilning.csv",
      "run,kiln,loaded_at,bed_depth_cm,note\nR1,K1,2026-03-08 06:00,1500,kept\n",
    );
    expect(valuesOf(logs, "kilning", "bed_depth_m")).toEqual([null]);
    expect(valuesOf(logs, "kilning", "note")).toEqual(["kept"]);
    expect(file).toMatchObject({ rows: 1, rowsSetAside: 0, valuesBlanked: 1 });
  });

  test("moments out of order are blanked but for the one that the row needs, and only they", async () => {
    const { logs, file } = await read(
      "kilning.csv",
      `run,kiln,loaded_at,cure_started_at,heat_off_at,unloaded_at
R1,K1,2026-03-08 06:00,2026-03-08 16:00,2026-03-08 15:00,2026-03-08 20:00
R2,K1,2026-03-10 06:00,2026-03-10 05:00,2026-03-10 15:00,2026-03-10 20:00
`,
    );
    expect(valuesOf(logs, "kilning", "cure_started_at")).toEqual([null, null]);
    expect(valuesOf(logs, "kilning", "heat_off_at")).toEqual([null, Date.UTC(2026, 2, 10, 15)]);
    expect(valuesOf(logs, "kilning", "unloaded_at")).toEqual([Date.UTC(2026, 2, 8, 20), Date.UTC(2026, 2, 10, 20)]);
    expect(file?.valuesBlanked).toBe(3);
  });

  test("too much malt loses its mass, over all loads of the run together", async () => {
    const { logs } = await read(
      "kilning.csv",
      "run,kiln,loaded_at,malt_out_kg\nR1,K1,2026-03-08 06:00,250\nR1,K1,2026-03-09 06:00,151\nR2,K1,2026-03-10 06:00,400\n",
      {
        "steeping.csv":
          "run,lot,started_at,grain_in_kg\nR1,L,2026-03-01 06:00,200\nR1,L,2026-03-01 07:00,200\nR2,L,2026-03-02 06:00,400\n",
      },
    );
    expect(valuesOf(logs, "kilning", "malt_out_kg")).toEqual([null, null, 400]);
  });

  test("an incomplete acrospire count loses all its classes", async () => {
    const { logs, file } = await read(
      "acrospire-counts.csv",
      "run,counted_at,acrospire_none,acrospire_over\nR1,2026-03-08 06:00,3,2\n",
    );
    expect(valuesOf(logs, "acrospire-counts", "acrospire_none")).toEqual([null]);
    expect(valuesOf(logs, "acrospire-counts", "acrospire_over")).toEqual([null]);
    expect(file?.valuesBlanked).toBe(2);
  });

  test("of a run name used twice the earliest batch stays, wherever it stands in the file", async () => {
    const { logs, file } = await read(
      "kilning.csv",
      "run,kiln,loaded_at,note\n12,K1,2026-03-08 06:00,later\n12,K1,2025-03-08 06:00,first\n",
    );
    expect(valuesOf(logs, "kilning", "note")).toEqual(["first"]);
    expect([...(logs.tables.get("kilning")?.lineOfRow ?? [])]).toEqual([3]);
    expect(file).toMatchObject({ rows: 1, rowsSetAside: 1 });
  });

  test("a column that stands twice is not read at all, and its values are counted", async () => {
    const { logs, file } = await read(
      "kilning.csv",
      "run,kiln,loaded_at,note,note\nR1,K1,2026-03-08 06:00,a,b\nR2,K1,2026-03-09 06:00,,c\n",
    );
    expect(logs.tables.get("kilning")?.columns.has("note")).toBe(false);
    expect(logs.tables.get("kilning")?.unknownColumns.size).toBe(0);
    expect(file).toMatchObject({ rows: 2, valuesBlanked: 3 });
  });

  test("a file that writes decimals both ways is set aside with all its rows", async () => {
    const { logs, file } = await read(
      "lab.csv",
      "run;tested_on;ph\nR1;2026-03-08;5,6\n\nR2;2026-03-08;5.6\nR3;2026-03-08;6\n",
    );
    expect(logs.tables.has("lab")).toBe(false);
    expect(file).toMatchObject({ rows: 0, rowsSetAside: 3 });
  });

  test("a file without a needed column is set aside with all its rows, and each row is not complained of besides", async () => {
    const { logs, file } = await read("kilning.csv", "run,kiln\nR1,K1\nR2\n");
    expect(logs.problems.map(({ rule }) => rule)).toEqual(["needed-column-missing"]);
    expect(file).toMatchObject({ rows: 0, rowsSetAside: 2 });
  });

  test("an open quote takes the rest of the file, and says how far", async () => {
    const { logs, file } = await read(
      "kilning.csv",
      'run,kiln,loaded_at\nR1,K1,2026-03-08 06:00\nR2,"K1,2026-03-09 06:00\n\nR3,K1,2026-03-10 06:00\n',
    );
    expect(valuesOf(logs, "kilning", "run")).toEqual(["R1"]);
    expect(file).toMatchObject({ rows: 1, rowsSetAside: 2 });
    expect(logs.problems[0]?.message).toContain("lines 3 to 5");
  });

  test("every fault of a row is reported, not only the first", async () => {
    const { logs, file } = await read(
      "kilning.csv",
      "run,kiln,loaded_at,bed_depth_cm,ambient_rh_pct\n,K1,yesterday,deep,140\n",
    );
    expect(logs.problems.map(({ column }) => column)).toEqual(["run", "loaded_at", "bed_depth_cm", "ambient_rh_pct"]);
    expect(file).toMatchObject({ rows: 0, rowsSetAside: 1 });
  });
});

describe("readLogs keeps quiet at the edge:", () => {
  const files: readonly [string, FileTexts][] = [
    [
      "a value at the very limit of its range in either unit",
      { "kilning.csv": "run,kiln,loaded_at,bed_depth_cm,drying_set_f\nR1,K1,2026-03-08 06:00,200,50\n" },
    ],
    [
      "as much malt as grain, moistures unknown",
      {
        "steeping.csv": "run,lot,started_at,grain_in_kg\nR1,L,2026-03-01 06:00,400\n",
        "kilning.csv": "run,kiln,loaded_at,malt_out_kg\nR1,K1,2026-03-06 06:00,400\n",
      },
    ],
    [
      "a dry-matter yield of exactly 100 %",
      {
        "steeping.csv": "run,lot,started_at,grain_in_kg,grain_moisture_pct\nR1,L,2026-03-01 06:00,100,12\n",
        "kilning.csv": "run,kiln,loaded_at,malt_out_kg,final_moisture_pct\nR1,K1,2026-03-06 06:00,88,0\n",
      },
    ],
    [
      "two unnamed tanks of one run",
      {
        "steeping.csv": "run,lot,started_at,grain_in_kg\nR1,L,2026-03-01 06:00,200\nR1,L,2026-03-01 06:00,201\n",
      },
    ],
    [
      "runs without a steeping log",
      {
        "kilning.csv": "run,kiln,loaded_at\nR1,K1,2026-03-06 06:00\n",
        "moisture-samples.csv": "run,moisture_pct\nR1,4\n",
      },
    ],
    [
      "a kiln emptied the moment its heat went off",
      {
        "kilning.csv":
          "run,kiln,loaded_at,heat_off_at,unloaded_at\nR1,K1,2026-03-06 06:00,2026-03-06 18:00,2026-03-06 18:00\n",
      },
    ],
    [
      "a delivery of a run that the kilning log does not have",
      {
        "kilning.csv": "run,kiln,loaded_at,malt_out_kg\nR1,K1,2026-03-06 06:00,300\n",
        "steeping.csv": "run,lot,started_at\nR1,L,2026-03-01 06:00\nR2,L,2026-03-02 06:00\n",
        "deliveries.csv": "delivery,customer,run,shipped_on,mass_kg\nD1,C,R2,2026-03-08,300\n",
      },
    ],
    [
      "deliveries of rootlets beside all the malt",
      {
        "kilning.csv": "run,kiln,loaded_at,malt_out_kg\nR1,K1,2026-03-06 06:00,300\n",
        "deliveries.csv":
          "delivery,customer,run,shipped_on,mass_kg,product\nD1,C,R1,2026-03-08,300,malt\nD1,C,R1,2026-03-08,20,rootlets\n",
      },
    ],
  ];

  test.each(files)("%s", async (_, texts) => {
    expect((await logsOf(texts)).problems).toEqual([]);
  });
});
