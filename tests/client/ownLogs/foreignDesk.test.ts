import { describe, expect, it, vi } from "vitest";
import type { ChosenFile } from "../../../src/client/ownLogs/chosenFile.ts";
import { openForeignDesk } from "../../../src/client/ownLogs/foreignDesk.ts";
import { readMatches } from "../../../src/tables/foreign/readMatches.ts";

const file = (path: string, content: string): ChosenFile => ({ path, blob: new Blob([content]) });

const LOGGER = file("K1-2026-03.csv", "Time;Inlet °C;Burner\n1.3.2026 10:00;54,5;closed\n1.3.2026 10:01;54,6;open\n");
const SHEET = file("book.csv", "Batch,Customer,Shipped,Malt kg\n26-1,Anna,2026-03-02,250\n");
const MATCHED =
  '# ours\n[[match]]\nfiles = "K1-*.csv"\ntable = "readings"\ndate_order = "dmy"\n[match.fixed]\nkiln = "K1"\n' +
  '[match.columns]\nat = "Time"\nair_on_f = "Inlet °C"\n';

/** A page that draws when it is let, and notes what it is asked for. */
function host() {
  const turned: string[] = [];
  const saved: string[] = [];
  let held: (() => void)[] | null = null;
  const changed = vi.fn(() => (held === null ? Promise.resolve() : new Promise<void>((drawn) => held?.push(drawn))));
  const desk = openForeignDesk({
    changed,
    house: () => 'time_zone = "Europe/Berlin"\n[[kilns]]\nid = "K1"\n',
    turnTo: (id) => turned.push(id),
    save: (text) => saved.push(text),
  });
  return {
    desk,
    turned,
    saved,
    changed,
    hold: () => {
      held = [];
    },
    draw: () => {
      const waiting = held ?? [];
      held = null;
      for (const drawn of waiting) drawn();
    },
  };
}

/** Until all that was begun has come to its end. */
const settled = async (): Promise<void> => {
  for (let turn = 0; turn < 20; turn += 1) await new Promise((go) => setImmediate(go));
};
const statuses = ({ desk }: ReturnType<typeof host>) =>
  desk.state.files.map(({ key, status }) => [key, status] as const);
const matchesRead = async (files: readonly ChosenFile[]) =>
  readMatches((await files.find(({ path }) => path === "columns.toml")?.blob.text()) ?? "").matches;

describe("openForeignDesk(host)", () => {
  it("lists what is to be matched, and reads nothing of it until somebody says so", async () => {
    const page = host();
    await page.desk.look([LOGGER, SHEET]);
    expect(statuses(page)).toEqual([
      ["K1-*.csv", "open"],
      ["book.csv", "open"],
    ]);
    expect(page.desk.withMatches([LOGGER, SHEET])).toEqual([LOGGER, SHEET]);

    page.desk.state.hands.match("K1-*.csv");
    await settled();
    expect(page.turned).toEqual(["match-title"]);
    expect(page.desk.state.matching?.previews[0]?.rows).toHaveLength(2);
    expect(page.desk.withMatches([LOGGER])).toEqual([LOGGER]);

    page.desk.state.hands.take();
    await settled();
    expect(page.desk.state.matching).toBeNull();
    expect(statuses(page)).toEqual([
      ["K1-*.csv", "taken"],
      ["book.csv", "open"],
    ]);
    expect(page.turned).toEqual(["match-title", "foreign-file-0"]);
    expect(await matchesRead(page.desk.withMatches([LOGGER]))).toMatchObject([
      { files: "K1-*.csv", table: "readings" },
    ]);
    page.desk.state.hands.save();
    expect(readMatches(page.saved[0] ?? "").matches).toHaveLength(1);

    page.desk.state.hands.undo("K1-*.csv");
    expect(page.desk.withMatches([LOGGER])).toEqual([LOGGER]);
  });

  it("refuses to take a file that it is not said of what it holds", async () => {
    const page = host();
    const letter = file("x.csv", "Street,Town\nHigh Street,Somewhere\nLow Street,Elsewhere\n");
    await page.desk.look([letter]);
    page.desk.state.hands.match("x.csv");
    await settled();
    page.desk.state.hands.take();
    expect(page.desk.state.matching?.said).toBe("Say first what this file holds.");
    page.desk.state.hands.leaveOut("x.csv");
    expect(statuses(page)).toEqual([["x.csv", "left-out"]]);
  });

  it("takes changes back one by one, what was typed into one box as one, and the layout too", async () => {
    const page = host();
    await page.desk.look([LOGGER]);
    const { hands } = page.desk.state;
    hands.match("K1-*.csv");
    await settled();
    const now = () => page.desk.state.matching;
    const before = now()?.columns.map(({ use }) => use);
    expect(now()?.canGoBack).toBe(false);
    hands.use(1, "unread");
    hands.layOut(",", 1, 0);
    await settled();
    expect(now()?.columns).toHaveLength(1);
    hands.back();
    expect(now()?.columns.map(({ use }) => use)).toEqual([before?.[0], "unread", before?.[2]]);
    hands.back();
    expect(now()?.columns.map(({ use }) => use)).toEqual(before);
    for (const text of ["O", "Ov", "Oven"]) hands.fix("readings", "kiln", text);
    expect(now()?.fixed[0]?.value).toBe("Oven");
    hands.back();
    expect(now()?.fixed[0]?.value).toBe("K1");
    expect(now()?.canGoBack).toBe(false);
  });

  it("keeps what was said of files that are put away and chosen again", async () => {
    const page = host();
    await page.desk.look([LOGGER]);
    page.desk.state.hands.match("K1-*.csv");
    await settled();
    page.desk.state.hands.take();
    await page.desk.look([]);
    expect(page.desk.state.files).toEqual([]);
    await page.desk.look([LOGGER]);
    expect(statuses(page)).toEqual([["K1-*.csv", "taken"]]);
  });

  it("shows the newest choice where an older one is looked over for longer", async () => {
    const page = host();
    let open: () => void = () => {};
    const gate = new Promise<void>((go) => {
      open = go;
    });
    const { blob } = file("slow.csv", "Time;Inlet\n1.3.2026 10:00;54,5\n");
    const late = async (): Promise<Uint8Array<ArrayBuffer>> => {
      await gate;
      return new Uint8Array(await blob.arrayBuffer());
    };
    const stream = () =>
      new ReadableStream({
        async start(controller) {
          controller.enqueue(await late());
          controller.close();
        },
      });
    const slow: ChosenFile = { path: "slow.csv", blob: { size: blob.size, stream } as unknown as Blob };
    const first = page.desk.look([slow]);
    await page.desk.look([SHEET]);
    open();
    await first;
    expect(statuses(page)).toEqual([["book.csv", "open"]]);
  });

  it("draws only the latest of several changes, and turns to the title once that is drawn", async () => {
    const page = host();
    await page.desk.look([LOGGER]);
    page.changed.mockClear();
    page.hold();
    const { hands } = page.desk.state;
    hands.match("K1-*.csv");
    hands.decimal(".");
    hands.decimal(",");
    await settled();
    expect(page.changed).toHaveBeenCalledTimes(1);
    expect(page.turned).toEqual([]);
    page.draw();
    await settled();
    expect(page.turned).toEqual(["match-title"]);
    expect(page.desk.state.matching?.decimal).toBe(",");
  });

  it("shows how a chosen columns.toml reads a file, and puts a correction in its place and nothing else", async () => {
    const page = host();
    const chosen = [LOGGER, file("columns.toml", MATCHED)];
    await page.desk.look(chosen);
    expect(page.desk.state.files).toMatchObject([{ key: "K1-*.csv", status: "taken", isNews: false }]);
    expect(page.desk.withMatches(chosen)).toBe(chosen);
    const { hands } = page.desk.state;
    hands.match("K1-*.csv");
    await settled();
    expect(page.desk.state.matching?.columns[1]).toMatchObject({ unit: "air_on_f" });
    hands.unit(1, "air_on_c");
    hands.take();
    expect(page.desk.state.files).toMatchObject([{ status: "taken", isNews: true }]);
    hands.save();
    const { matches } = readMatches(page.saved[0] ?? "");
    expect(page.saved[0]).toContain("# ours");
    expect(matches).toHaveLength(1);
    expect(matches[0]?.columns.map(({ to }) => to)).toEqual(["at", "air_on_c"]);
    // The one that is read last holds the others.
    expect((await page.desk.withMatches(chosen).at(-1)?.blob.text()) ?? "").toBe(page.saved[0]);

    hands.undo("K1-*.csv");
    expect(page.desk.withMatches(chosen)).toBe(chosen);
  });

  it("says of a file that columns.toml reads in a way of its own that it can be changed there", async () => {
    const page = host();
    await page.desk.look([
      LOGGER,
      file("columns.toml", MATCHED.replace('"Inlet °C"', '{ from = "Inlet °C", times = 0.1 }')),
    ]);
    expect(statuses(page)).toEqual([["K1-*.csv", "beyond"]]);
  });
});
