import { readFileSync } from "node:fs";
import type { Browser, Page } from "playwright-core";
import { afterAll, beforeAll, describe, expect, inject, it } from "vitest";
import { openBrowser, PHONE, watchedPage } from "../support/browser.ts";

const site = inject("site");

let browser: Browser;
beforeAll(async () => {
  browser = await openBrowser();
});
afterAll(async () => {
  await browser.close();
});

const ready = (page: Page) => page.locator("#box-run:enabled").waitFor();

async function begin(page: Page, run: string): Promise<void> {
  await page.goto(`${site}write-up/`);
  await ready(page);
  await page.fill("#box-run", run);
  await page.keyboard.press("Tab");
}

/** A browser that lets files be written, with a logs folder that lies in the browser's own private disk. */
async function withFolder(page: Page, files: Readonly<Record<string, string>>): Promise<void> {
  await page.evaluate(async (given) => {
    const root = await navigator.storage.getDirectory();
    const folder = await root.getDirectoryHandle("logs", { create: true });
    for (const [name, text] of Object.entries(given)) {
      const file = await (await folder.getFileHandle(name, { create: true })).createWritable();
      await file.write(text);
      await file.close();
    }
    Object.assign(globalThis, { showDirectoryPicker: async () => folder });
  }, files);
}

const fileInFolder = (page: Page, name: string): Promise<string> =>
  page.evaluate(async (wanted) => {
    const folder = await (await navigator.storage.getDirectory()).getDirectoryHandle("logs");
    return (await (await folder.getFileHandle(wanted)).getFile()).text();
  }, name);

describe("the page that writes up a batch", () => {
  it("checks what is typed as it is typed, and says it beside the box", async () => {
    const { page, context, outside, faults } = await watchedPage(browser, site, { viewport: PHONE });
    await begin(page, "26-300");
    await page.fill("#box-water_c", "120");
    await page.locator("#box-water_c-said").getByText("outside 0 to 40").waitFor();
    expect(await page.getAttribute("#box-water_c", "aria-invalid")).toBe("true");
    await page.fill("#box-water_c", "12");
    await page.locator("#box-water_c-said").waitFor({ state: "detached" });
    expect(outside).toEqual([]);
    expect(faults).toEqual([]);
    await context.close();
  });

  it("has boxes and buttons for a thumb, and fits a phone", async () => {
    const { page, context } = await watchedPage(browser, site, { viewport: PHONE });
    await begin(page, "26-300");
    for (const box of await page.locator(".boxes input, .boxes button, .write-up-stages button").all()) {
      expect((await box.boundingBox())?.height ?? 0).toBeGreaterThanOrEqual(44);
    }
    const wider = await page.evaluate(
      () => document.documentElement.scrollWidth - document.documentElement.clientWidth,
    );
    expect(wider).toBe(0);
    await context.close();
  });

  it("keeps a draft over a reload, saves nothing that lacks what a row needs, then downloads it and can put it back", async () => {
    const { page, context } = await watchedPage(browser, site, { viewport: PHONE });
    await begin(page, "26-301");
    await page.fill("#box-grain_in_kg", "350.5");
    await page.reload();
    await ready(page);
    await expect.poll(() => page.inputValue("#box-grain_in_kg")).toBe("350.5");
    expect(await page.inputValue("#box-run")).toBe("26-301");

    await page.getByRole("button", { name: "Download the row for steeping.csv" }).click();
    await page.locator("#box-lot-said").waitFor();
    await page.locator("#box-started_at-said").waitFor();

    await page.fill("#box-lot", "L26-01");
    await page.fill("#box-started_at", "2026-10-20T07:30");
    const [download] = await Promise.all([
      page.waitForEvent("download"),
      page.getByRole("button", { name: "Download the row for steeping.csv" }).click(),
    ]);
    expect(download.suggestedFilename()).toBe("steeping-26-301.csv");
    const [head = "", row] = readFileSync(await download.path(), "utf8").split("\n");
    const cells = Object.fromEntries(head.split(",").map((heading, at) => [heading, row?.split(",")[at]]));
    expect(cells).toMatchObject({ run: "26-301", lot: "L26-01", grain_in_kg: "350.5", started_at: "2026-10-20 07:30" });
    await expect.poll(() => page.inputValue("#box-grain_in_kg")).toBe("");

    await page.getByRole("button", { name: "Put it back" }).click();
    await expect.poll(() => page.inputValue("#box-grain_in_kg")).toBe("350.5");
    await context.close();
  });

  it("takes a draft away by a button, and puts it back by another", async () => {
    const { page, context } = await watchedPage(browser, site);
    await begin(page, "26-302");
    await page.fill("#box-lot", "L7");
    await page.getByRole("button", { name: "Remove what is typed of 26-302" }).click();
    await expect.poll(() => page.inputValue("#box-lot")).toBe("");
    await page.getByRole("button", { name: "Put it back" }).click();
    await expect.poll(() => page.inputValue("#box-lot")).toBe("L7");
    await page.reload();
    await ready(page);
    await expect.poll(() => page.inputValue("#box-lot")).toBe("L7");
    await context.close();
  });

  it("adds rows to the files of a chosen folder, under their own headings and in their own units", async () => {
    const { page, context, faults } = await watchedPage(browser, site);
    await page.goto(`${site}write-up/`);
    await ready(page);
    const kilning = "run;note;loaded_at;kiln;bed_depth_in\n25-001;even;2025-10-25 12:00;K1;5,9\n";
    await withFolder(page, {
      "house.toml": 'name = "Disk house"\ntime_zone = "America/New_York"\n[[kilns]]\nid = "K1"\n',
      "kilning.csv": kilning,
    });
    await page.getByRole("button", { name: "Open the logs folder" }).click();
    await page.getByText("Rows are added to the files in logs").waitFor();
    await page.fill("#box-run", "26-303");
    await page.keyboard.press("Tab");
    await page.getByRole("button", { name: "Kiln", exact: true }).click();
    await page.fill("#box-kiln", "K9");
    await page.fill("#box-loaded_at", "2026-10-25T12:00");
    await page.fill("#box-bed_depth_in", "6.25");
    // The house's own file knows its kilns, so that a slip is seen.
    await page.locator("#box-kiln-said").getByText("house.toml lists no kiln K9").waitFor();
    await page.fill("#box-kiln", "K1");
    await page.locator("#box-kiln-said").waitFor({ state: "detached" });
    await page.getByRole("button", { name: "Add to kilning.csv" }).click();
    await page.getByText("Added to kilning.csv in logs.").waitFor();
    expect(await fileInFolder(page, "kilning.csv")).toBe(`${kilning}26-303;;2026-10-25 12:00;K1;6,25\n`);

    // A stage whose log is not there yet gets one with its headings.
    await page.getByRole("button", { name: "Germination" }).click();
    await page.fill("#box-started_at", "2026-10-21T08:00");
    await page.getByRole("button", { name: "One more: How often the bed was turned" }).click();
    await page.getByRole("button", { name: "Add to germination.csv" }).click();
    await page.getByText("Added to germination.csv in logs.").waitFor();
    const [head, row] = (await fileInFolder(page, "germination.csv")).split("\n");
    expect(head).toMatch(/^run,bed,started_at,/);
    expect(row).toMatch(/^26-303,,2026-10-21 08:00,/);
    expect(faults).toEqual([]);
    await context.close();
  });

  it("takes an added row out of its file again and puts it back into the boxes, and leaves a file alone that was changed since", async () => {
    const { page, context, faults } = await watchedPage(browser, site);
    await page.goto(`${site}write-up/`);
    await ready(page);
    // The last line has no end, so that a line's end goes in before the row.
    const kilning = "run,kiln,loaded_at,note\n25-001,K1,2025-10-25 12:00,even";
    const files = { "house.toml": 'time_zone = "Etc/UTC"\n', "kilning.csv": kilning };
    await withFolder(page, files);
    await page.getByRole("button", { name: "Open the logs folder" }).click();
    await page.getByText("Rows are added to the files in logs").waitFor();
    await page.fill("#box-run", "26-305");
    await page.keyboard.press("Tab");
    await page.getByRole("button", { name: "Kiln", exact: true }).click();
    await page.fill("#box-kiln", "K1");
    await page.fill("#box-loaded_at", "2026-10-25T12:00");
    const add = page.getByRole("button", { name: "Add to kilning.csv" });
    const takeOut = page.getByRole("button", { name: "Take the row of 26-305 out of kilning.csv again" });
    await add.click();
    await page.getByText("Added to kilning.csv in logs.").waitFor();
    expect(await fileInFolder(page, "kilning.csv")).toBe(`${kilning}\n26-305,K1,2026-10-25 12:00,\n`);

    // The next stage is begun before the slip is seen: what is typed there stays.
    await page.getByRole("button", { name: "Germination" }).click();
    await page.fill("#box-started_at", "2026-10-21T08:00");
    await takeOut.click();
    await page.getByText("Taken out of kilning.csv in logs again.").waitFor();
    expect(await fileInFolder(page, "kilning.csv")).toBe(kilning);
    await expect.poll(() => page.inputValue("#box-loaded_at")).toBe("2026-10-25T12:00");
    await page.getByRole("button", { name: "Germination" }).click();
    expect(await page.inputValue("#box-started_at")).toBe("2026-10-21T08:00");

    // A file that was made for the row goes with it.
    await page.getByRole("button", { name: "Add to germination.csv" }).click();
    await page.getByText("Added to germination.csv in logs.").waitFor();
    await page.getByRole("button", { name: "Take the row of 26-305 out of germination.csv again" }).click();
    await page.getByText("Taken out of germination.csv in logs again.").waitFor();
    await expect(fileInFolder(page, "germination.csv")).rejects.toThrow("NotFoundError");

    await page.getByRole("button", { name: "Kiln", exact: true }).click();
    await add.click();
    await page.getByText("Added to kilning.csv in logs.").waitFor();
    const since = (await fileInFolder(page, "kilning.csv")).replace("even", "odd!");
    await withFolder(page, { ...files, "kilning.csv": since });
    await takeOut.click();
    await page.getByText("kilning.csv was changed after the row was added, and was left alone").waitFor();
    expect(await fileInFolder(page, "kilning.csv")).toBe(since);
    expect(await takeOut.count()).toBe(0);
    expect(await page.inputValue("#box-kiln")).toBe("");
    expect(faults).toEqual([]);
    await context.close();
  });

  it("writes nothing where the file would not be read with the row in it, and says so", async () => {
    const { page, context } = await watchedPage(browser, site);
    await page.goto(`${site}write-up/`);
    await ready(page);
    const broken = 'run,kiln,loaded_at,note\n25-001,K1,2025-10-25 12:00,"left open\n';
    await withFolder(page, { "house.toml": 'name = "Disk house"\ntime_zone = "Etc/UTC"\n', "kilning.csv": broken });
    await page.getByRole("button", { name: "Open the logs folder" }).click();
    await page.getByText("Rows are added to the files in logs").waitFor();
    await page.fill("#box-run", "26-304");
    await page.keyboard.press("Tab");
    await page.getByRole("button", { name: "Kiln", exact: true }).click();
    await page.fill("#box-kiln", "K1");
    await page.fill("#box-loaded_at", "2026-10-25T12:00");
    await page.getByRole("button", { name: "Add to kilning.csv" }).click();
    await page.getByText(/Not saved\. kilning\.csv would not be read/).waitFor();
    expect(await fileInFolder(page, "kilning.csv")).toBe(broken);
    expect(await page.inputValue("#box-kiln")).toBe("K1");
    await context.close();
  });

  it("remembers the folder from visit to visit, asks for it again at a press where the browser does, and forgets it", async () => {
    const { page, context, faults } = await watchedPage(browser, site);
    // A private disk is always let in; a folder on the reader's own disk mostly not before they are asked.
    await page.addInitScript(() => {
      let granted = false;
      const answer = async (): Promise<PermissionState> => {
        if (sessionStorage.getItem("asks") === null) return "granted";
        if (sessionStorage.getItem("asks") === "refuses") return "denied";
        return granted ? "granted" : "prompt";
      };
      Object.assign(FileSystemHandle.prototype, {
        queryPermission: answer,
        requestPermission: () => {
          granted = true;
          return answer();
        },
      });
    });
    const asks = (how: string | null) =>
      page.evaluate(
        (to) => (to === null ? sessionStorage.removeItem("asks") : sessionStorage.setItem("asks", to)),
        how,
      );
    const visit = async (): Promise<void> => {
      await page.goto(`${site}write-up/`);
      await ready(page);
    };
    const opened = page.getByText("Rows are added to the files in logs");
    await visit();
    expect(await page.evaluate(async () => (await indexedDB.databases()).length)).toBe(0);
    await withFolder(page, { "house.toml": 'time_zone = "Etc/UTC"\n', "moisture-samples.csv": "run,moisture_pct\n" });
    await page.getByRole("button", { name: "Open the logs folder" }).click();
    await opened.waitFor();

    // Granted for good: it is simply there.
    await visit();
    await opened.waitFor();

    // Granted for a visit: a press opens it again, and a row goes into it.
    await asks("each visit");
    await visit();
    await page.getByRole("button", { name: "Open logs again" }).waitFor();
    expect(await opened.count()).toBe(0);
    await page.getByRole("button", { name: "Open logs again" }).click();
    await opened.waitFor();
    await page.fill("#box-run", "26-310");
    await page.keyboard.press("Tab");
    await page.fill("#box-lot", "L1");
    await page.fill("#box-started_at", "2026-10-20T07:30");
    await page.getByRole("button", { name: "Add to steeping.csv" }).click();
    await page.getByText("Added to steeping.csv in logs.").waitFor();
    expect(await fileInFolder(page, "steeping.csv")).toContain("26-310,L1,");

    // Refused: nothing is added, and the page says so.
    await asks("refuses");
    await visit();
    await page.getByRole("button", { name: "Open logs again" }).click();
    await page.getByText("The browser was not allowed to open logs.").waitFor();

    // Moved away in the meantime.
    await asks(null);
    await page.evaluate(async () => (await navigator.storage.getDirectory()).removeEntry("logs", { recursive: true }));
    await visit();
    await page.getByRole("button", { name: "Open logs again" }).click();
    await page.getByText("The folder logs cannot be opened any more").waitFor();

    await page.getByRole("button", { name: "Forget this folder" }).click();
    await page.getByRole("button", { name: "Open the logs folder" }).waitFor();
    await visit();
    await page.getByRole("button", { name: "Open the logs folder" }).waitFor();
    expect(await page.getByRole("button", { name: "Open logs again" }).count()).toBe(0);
    expect(await page.evaluate(async () => (await indexedDB.databases()).length)).toBe(0);
    expect(faults).toEqual([]);
    await context.close();
  });
});
