import { expect, test } from "vitest";
import { DAY, HOUR, instantAt, localText, MINUTE, toFiveMinutes, utcText } from "../../scripts/demo/clock.ts";

/** EU Directive 2000/84/EC: summer time begins and ends at 01:00 UTC on the last Sunday of March and of October. */
test.each([
  [Date.UTC(2025, 2, 30, 0, 59), "2025-03-30 02:59"],
  [Date.UTC(2025, 2, 30, 1, 0), "2025-03-30 04:00"],
  [Date.UTC(2025, 9, 26, 0, 59), "2025-10-26 03:59"],
  [Date.UTC(2025, 9, 26, 1, 0), "2025-10-26 03:00"],
])("localText(%d) is %s across a clock change", (instant, text) => {
  expect(localText(instant)).toBe(text);
});

test("instantAt inverts localText on every hour of two years but the second pass of the doubled hours", () => {
  let twice = 0;
  for (let at = Date.UTC(2025, 0, 1); at < Date.UTC(2027, 0, 1); at += HOUR) {
    const [date = "", clock = ""] = localText(at).split(" ");
    const back = instantAt(date, Number(clock.slice(0, 2)), Number(clock.slice(3)));
    if (back === at - HOUR) twice++;
    else expect(back).toBe(at);
  }
  expect(twice).toBe(2);
});

test("utcText and toFiveMinutes write a moment as a logger and a person do", () => {
  const at = Date.UTC(2026, 9, 31, 15, 47);
  expect(utcText(at)).toBe("2026-10-31 15:47");
  expect(utcText(toFiveMinutes(at))).toBe("2026-10-31 15:45");
  expect(toFiveMinutes(at + 2 * DAY + 3 * MINUTE) % (5 * MINUTE)).toBe(0);
});
