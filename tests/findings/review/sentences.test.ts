import { describe, expect, it } from "vitest";
import { costSentence, money } from "../../../src/findings/review/costSentence.ts";
import { eventEffect, eventSentence } from "../../../src/findings/review/eventSentences.ts";
import { factShort } from "../../../src/findings/review/factShort.ts";
import { factWhat } from "../../../src/findings/review/factWhat.ts";
import { lookedAtSentence, monthAnswer } from "../../../src/findings/review/monthAnswer.ts";
import { namedOf } from "../../../src/findings/review/namedOf.ts";
import { logHealthSentence, openSentence } from "../../../src/findings/review/openSentences.ts";
import { ordersEyeSentence } from "../../../src/findings/review/ordersEye.ts";
import {
  overdueSentence,
  paceSentence,
  promisedAnswer,
  startNextSentence,
} from "../../../src/findings/review/promisedSentences.ts";
import { findingInWords } from "../../../src/findings/review/reviewFinding.ts";
import { partSums, totalLines, yieldLine } from "../../../src/findings/review/totalsLine.ts";
import { plainText, type Sentence } from "../../../src/findings/sentence.ts";
import type { Fact } from "../../../src/report/fact.ts";
import { handMadeEffect } from "../../support/handMadeChange.ts";
import {
  everyFact,
  findingOf,
  madeUpMonth,
  madeUpPromised,
  madeUpReader,
  totalsOf,
} from "../../support/madeUpReview.ts";

const said = (sentence: Sentence): string => plainText(sentence).replace(/[\u00a0\u202f]/g, " ");
const factOf = (kind: Fact["kind"]): Fact => {
  const found = everyFact.find((fact) => fact.kind === kind);
  if (found === undefined) throw new RangeError(`no made-up fact of ${kind}`);
  return found;
};
const inPounds = { ...madeUpReader, units: "us" } as const;

describe.each(everyFact.map((fact) => [fact.kind, fact] as const))("a fact of %s", (_, fact) => {
  it.each([madeUpReader, inPounds])("is one whole sentence, and a clause for the headline", (reader) => {
    expect(said(factWhat(fact, reader))).toMatch(/^[A-Z].*\.$/);
    expect(factShort(fact, reader)).toMatch(/^[A-Z].*[^.]$/);
    expect(`${said(factWhat(fact, reader))} ${factShort(fact, reader)}`).not.toMatch(/NaN|undefined|null|Infinity/);
  });

  it("comes with a cost or a risk, a page and something to check first", () => {
    const finding = findingInWords(findingOf(fact), madeUpReader);
    expect(said(finding.cost)).toMatch(/\.$/);
    expect(finding.checkFirst.length).toBeGreaterThan(0);
    expect(finding.evidence[0]?.path).toMatch(/^([a-z-]+\/([\w~]+\/)?)?(#[\w-]+)?$/);
  });
});

describe("findingInWords(finding, reader)", () => {
  it("tells once what was logged about several witnesses", () => {
    const [hours, chart] = [factOf("kiln hours"), factOf("chart")];
    const [shared, own] = ["2 Apr 2026, kiln: belt", "3 Apr 2026, kiln: door"];
    const facts = [
      { ...hours, beside: [shared] },
      { ...chart, beside: [shared, own] },
    ] as const;
    const { evidence } = findingInWords({ ...findingOf(hours), facts }, madeUpReader);
    expect(evidence.map(({ beside }) => beside)).toEqual([[shared], [own]]);
  });
});

describe("monthAnswer(review, reader)", () => {
  it("says of a quiet month that it was quiet, and of how many batches", () => {
    expect(said(monthAnswer(madeUpMonth(), madeUpReader))).toBe(
      "October 2026 was quiet: nothing stands out in its 6 batches.",
    );
  });

  it("says the first finding in short and how many more there are", () => {
    const findings = [factOf("kiln hours"), factOf("bed"), factOf("steep")].map((fact) => findingOf(fact));
    expect(said(monthAnswer(madeUpMonth({ findings }), madeUpReader))).toBe(
      "Three batches took 2.2 h longer in the kiln than air and bed account for. Two more things to look at.",
    );
  });

  it("names the cause that joins slow kilns and damp malt", () => {
    const finding = { ...findingOf(factOf("kiln hours")), cause: "kiln air" } as const;
    expect(said(monthAnswer(madeUpMonth({ findings: [finding] }), madeUpReader))).toContain("too little air or heat");
  });

  it("names the scale where yield and the gain in mass moved together", () => {
    const finding = { ...findingOf(factOf("chart")), cause: "scale" } as const;
    expect(said(monthAnswer(madeUpMonth({ findings: [finding] }), madeUpReader))).toContain("a scale that has moved");
    const { what, checkFirst } = findingInWords(finding, madeUpReader);
    expect(said(what)).toContain("The scale seems to have moved");
    expect(checkFirst[0]).toContain("Weigh a known mass");
  });

  it("says of a month without a batch that none left the kiln", () => {
    const empty = madeUpMonth({ totals: totalsOf("2026-07", 0) });
    expect(said(monthAnswer(empty, madeUpReader))).toBe("No batch left the kiln in July 2026.");
    const logs = { ...factOf("logs"), kind: "logs", batchesLost: 4, missing: [] } as Extract<Fact, { kind: "logs" }>;
    expect(said(monthAnswer({ ...empty, findings: [findingOf(logs)] }, madeUpReader))).toBe(
      "Of no batch that left the kiln in July 2026 could the kiln’s row be read: 4 batches lost.",
    );
  });
});

describe("lookedAtSentence(review)", () => {
  it("names what was looked at and what there was too little of", () => {
    expect(said(lookedAtSentence(madeUpMonth()))).toBe(
      "Looked at: kiln hours and yield and moisture. Too little is logged to look at the beds.",
    );
  });
});

describe("totalLines(review, units)", () => {
  it("prints the month, the one before and what changed", () => {
    const line = totalLines(madeUpMonth(), "metric").find(({ name }) => name === "grain in, kg");
    expect(line).toEqual({
      name: "grain in, kg",
      now: "1800",
      lastMonth: "2100",
      onLastMonth: "−300",
      lastYear: "",
      onLastYear: "",
    });
  });

  it("compares no sum that is short of a batch, and says which is", () => {
    const partly = { grainIn: 6, maltOut: 6, kilnHours: 6, energy: 4 };
    const review = madeUpMonth({ totals: totalsOf("2026-10", 6, { logged: partly }) });
    expect(totalLines(review, "metric").find(({ name }) => name === "energy, kWh")?.onLastMonth).toBe("");
    expect(said(partSums(review))).toBe("Energy was logged for only 4 of 6 loads in October 2026.");
  });

  it("takes a change from the figures as they are printed", () => {
    const [totals, lastMonth] = [77.6, 74.4].map((kilnHours) => totalsOf("2026-10", 6, { kilnHours }));
    const review = madeUpMonth({ ...(totals && { totals }), lastMonth: lastMonth ?? null });
    const line = totalLines(review, "metric").find(({ name }) => name === "in the kiln, h");
    expect(line).toMatchObject({ now: "78", lastMonth: "74", onLastMonth: "+4" });
  });

  it("leaves out what was logged in none of the months", () => {
    const none = { energyKilowattHours: null };
    const review = madeUpMonth({ totals: totalsOf("2026-10", 6, none), lastMonth: totalsOf("2026-09", 7, none) });
    expect(totalLines(review, "metric").map(({ name }) => name)).not.toContain("energy, kWh");
  });
});

describe("namedOf(runs, runCount)", () => {
  const runs = Array.from({ length: 12 }, (_, i) => `26-${101 + i}`);
  it("names few batches, and of many the number and the latest", () => {
    expect(namedOf(runs.slice(0, 1), 1)).toEqual({ words: "batch", runs: ["26-101"] });
    expect(namedOf(runs.slice(0, 4), 4)).toEqual({ words: "batches", runs: runs.slice(0, 4) });
    expect(namedOf(runs, 14)).toEqual({ words: "14\u00a0batches, the latest", runs: ["26-110", "26-111", "26-112"] });
  });
});

describe("yieldLine(review)", () => {
  it("gives malt out of grain in with the change in words", () => {
    const lastMonth = totalsOf("2026-09", 7, { maltOutKilograms: 0.85 * 2100 });
    expect(said(yieldLine(madeUpMonth({ lastMonth })))).toBe(
      "84.0 % of the grain became malt, weighed as it is and cleaned where that was logged; 1.0 points less than in September 2026.",
    );
  });
});

describe("costSentence(finding, reader)", () => {
  it("names the money first and what it is made of", () => {
    const finding = { ...findingOf(factOf("chart")), costAMonth: 510 };
    expect(said(costSentence(finding, madeUpReader))).toBe(
      "Costs about €510 a month: 1.7 batches that may be refused.",
    );
  });

  it("says the risk where nothing is lost yet", () => {
    expect(said(costSentence(findingOf(factOf("thermostat")), madeUpReader))).toContain("Nothing lost yet");
  });
});

describe("money(amount, currency)", () => {
  it("prints the sign of a common currency and the code of any other", () => {
    expect(money(26.4, "GBP")).toBe("£26");
    expect(money(26.4, "SEK")).toBe("SEK 26");
  });
});

describe("openSentence(question, reader)", () => {
  it("says what became of what was open", () => {
    const lastMonth = findingOf(factOf("timetable"));
    const of = (now: "still there" | "gone") => said(openSentence({ id: "t", lastMonth, now }, madeUpReader));
    expect(of("gone")).toBe("Gone: batches grew 0.18 of a kernel short of the target.");
    expect(of("still there")).toMatch(/^Still there: /);
  });

  it("keeps the capital of a name", () => {
    const lastMonth = findingOf(factOf("variety"));
    expect(said(openSentence({ id: "v", lastMonth, now: "gone" }, madeUpReader))).toContain("Gone: Amber meets");
  });
});

describe("logHealthSentence(review)", () => {
  it("counts batches that lack something and what was set aside", () => {
    const { logHealth: sound } = madeUpMonth();
    const logHealth = { ...sound, rowsSetAside: 1, valuesBlanked: 2, runsComplete: 4 };
    const sentence = said(logHealthSentence(madeUpMonth({ logHealth })));
    expect(sentence).toContain("4 of 6 batches");
    expect(sentence).toContain("3 rows or values");
  });

  it("names files that could not be read, in a quiet month's answer too, and batches lost with their kiln row", () => {
    const { logHealth: sound } = madeUpMonth();
    const month = madeUpMonth({ logHealth: { ...sound, filesSetAside: ["events.csv"], runsLost: ["26-175"] } });
    const unread = "events.csv could not be read and is left out of all this";
    expect(said(logHealthSentence(month))).toContain(unread);
    expect(said(logHealthSentence(month))).toContain(
      "Batch 26-175 left the floor, but no row of the kiln could be read",
    );
    expect(said(monthAnswer(month, madeUpReader))).toContain(`quiet: nothing stands out in its 6 batches. ${unread}`);
  });
});

describe("promisedAnswer(promised, reader)", () => {
  it("says what is short and what to start first", () => {
    expect(said(promisedAnswer(madeUpPromised, madeUpReader))).toBe(
      "850 kg in 1 open order; 61 kg of Amber is neither in store nor on its way. Start Amber first, in steep by 11 Nov 2026 for order O7.",
    );
  });

  it("does not name a day that has passed", () => {
    const startFirst = [{ variety: "Amber", latestSteepAt: Date.UTC(2026, 8, 1), forOrder: "O7" }];
    const sentence = said(promisedAnswer({ ...madeUpPromised, startFirst }, madeUpReader));
    expect(sentence).toContain("at once: order O7 will be late all the same");
    expect(sentence).not.toContain("Sep 2026");
  });

  it("says that all is there where all is there", () => {
    const varieties = madeUpPromised.varieties.map((one) => ({ ...one, shortKilograms: 0 }));
    expect(said(promisedAnswer({ ...madeUpPromised, varieties, startFirst: [] }, madeUpReader))).toContain(
      "all of it is in store or on its way",
    );
  });
});

describe("paceSentence(promised, reader)", () => {
  it("sets loads needed against the house's own pace, with the hours of a load and the chance of running late", () => {
    const pressed = { ...madeUpPromised, loadsNeeded: 7, nightsNeeded: 14, chanceLate: 0.35 };
    const sentence = said(paceSentence(pressed, madeUpReader));
    expect(sentence).toContain("5 loads in a middling spell of 4 weeks; what is promised needs 7 loads");
    expect(sentence).toContain("7 loads, 14 of the 28 kiln nights in the coming 4 weeks");
    expect(sentence).toContain("weeks: in this season’s air a load takes about 13.2 h (11.9 to 14.6 h). Started now");
    expect(sentence).toContain(
      "behind the 1 load under way, one of them would have come too late in 14 of 40 past spells",
    );
    expect(sentence).toContain("own pace, whatever their weather: a chance of running late of 35 in 100.");
  });

  it("says of what no pace can mend that it will be late", () => {
    const sentence = said(
      paceSentence({ ...madeUpPromised, spells: 0, chanceLate: 1, loadsUnderWay: 0 }, madeUpReader),
    );
    expect(sentence).toContain("Even started now, it will come too late.");
  });
});

describe("ordersEyeSentence(review)", () => {
  const overdue = madeUpPromised.orders.map((order) => ({ ...order, overdue: true }));
  const eye = (promised: Partial<typeof madeUpPromised>, findings = madeUpMonth().findings): string =>
    said(ordersEyeSentence({ promised: { ...madeUpPromised, ...promised }, findings }));

  it("names orders past their day and a fair chance of running late, and neither where there is none", () => {
    expect(eye({ orders: overdue, chanceLate: 0.63 })).toBe(
      "Worth an eye: 1 order past its day, and a chance of 63 in 100 that malt yet to be steeped comes too late.",
    );
    expect(eye({ orders: overdue })).toBe("Worth an eye: 1 order past its day.");
    expect(eye({ chanceLate: 0.24 })).toBe("");
    expect(said(ordersEyeSentence({ promised: null, findings: [] }))).toBe("");
  });

  it("is not said beside a finding of the same", () => {
    expect(eye({ orders: overdue, chanceLate: 0.9 }, [findingOf(factOf("orders"))])).toBe("");
  });

  it("is not denied by the month's answer", () => {
    const promised = { ...madeUpPromised, chanceLate: 0.63 };
    const month = madeUpMonth({ findings: [findingOf(factOf("thermostat"))], promised });
    expect(said(monthAnswer(month, madeUpReader))).toMatch(/In the batches nothing else stands out\.$/);
  });
});

describe("overdueSentence(promised, reader)", () => {
  it("names the first six orders past their day and counts the rest", () => {
    const [order] = madeUpPromised.orders;
    if (order === undefined) throw new RangeError("the made-up house has an order");
    const orders = Array.from({ length: 8 }, (_, i) => ({ ...order, order: `O${i}`, overdue: true }));
    expect(said(overdueSentence({ ...madeUpPromised, orders }, madeUpReader))).toContain(
      "Past their day: 8 orders with 6800 kg (O0, O1, O2, O3, O4, O5 and 2 more).",
    );
  });

  it("says how much of them lies in store, variety by variety", () => {
    const [order] = madeUpPromised.orders;
    if (order === undefined) throw new RangeError("the made-up house has an order");
    const amber = { ...order, overdue: true };
    const overdueIn = (orders: readonly (typeof order)[]): string =>
      said(overdueSentence({ ...madeUpPromised, orders }, madeUpReader));
    expect(overdueIn([amber])).toContain("789 kg of it lies in store");
    expect(overdueIn([{ ...amber, stillOwedKilograms: 300 }])).toContain("All of it lies in store");
    // Brindle has 20 kg, which Amber's order does not get.
    expect(overdueIn([amber, { ...amber, variety: "Brindle", stillOwedKilograms: 15 }])).toContain("804 kg of it lies");
  });
});

describe("startNextSentence(promised, reader)", () => {
  it("is empty where one variety alone must be started", () => {
    expect(startNextSentence(madeUpPromised, madeUpReader)).toEqual([]);
  });
});

describe("eventSentence(event)", () => {
  const event = { on: Date.UTC(2026, 9, 14), kind: "repair", scope: "kiln", what: "belt tightened", alters: null };
  it("dates an event by the log's own day, whatever the zone", () => {
    expect(said(eventSentence({ event, changeId: null, effect: null, tooLittle: null }))).toBe(
      "14 Oct 2026, kiln: belt tightened.",
    );
  });

  it("says why something could not be compared, and nothing of what could not show", () => {
    const bare = { event, changeId: null, effect: null, tooLittle: null };
    expect(eventEffect(bare, madeUpReader)).toEqual([]);
    expect(said(eventEffect({ ...bare, tooLittle: "3 loads are too few." }, madeUpReader))).toBe(
      "3 loads are too few.",
    );
    expect(said(eventEffect({ ...bare, effect: handMadeEffect }, madeUpReader))).toContain("Kiln hours fell by 1.0 h");
  });
});
