import { describe, expect, it } from "vitest";
import { reviewText, wrapped } from "../../../src/findings/review/reviewText.ts";
import { everyFact, findingOf, madeUpMonth, madeUpPromised, madeUpReader } from "../../support/madeUpReview.ts";

const titled = { house: "Example Malthouse", invented: true, logsTo: "31 October 2026" };

describe("wrapped(text, indent)", () => {
  it("breaks between words at 80 characters and loses none", () => {
    const text = "malt and barley ".repeat(30).trim();
    const lines = wrapped(text, "   ").split("\n");
    expect(lines.length).toBeGreaterThan(5);
    for (const line of lines) expect(line.length).toBeLessThanOrEqual(80);
    expect(lines.map((line) => line.trim()).join(" ")).toBe(text);
  });

  it("leaves a word that is longer than a line whole", () => {
    const word = "x".repeat(90);
    expect(wrapped(`a ${word} b`)).toBe(`a\n${word}\nb`);
  });
});

describe("reviewText(review, reader, titled)", () => {
  const full = madeUpMonth({
    findings: everyFact.map((fact) => findingOf(fact)),
    open: everyFact.slice(0, 3).map((fact) => ({ id: fact.kind, lastMonth: findingOf(fact), now: "gone" as const })),
    promised: madeUpPromised,
  });

  it("keeps to 80 columns of plain blanks", () => {
    const text = reviewText(full, madeUpReader, titled);
    for (const line of text.split("\n")) expect(line.length, line).toBeLessThanOrEqual(80);
    expect(text).not.toMatch(/[\u00a0\u202f]|NaN|undefined|null/);
  });

  it("numbers seven findings and counts the rest", () => {
    const text = reviewText(full, madeUpReader, titled);
    expect(text).toMatch(/^7\. [A-Z]/m);
    expect(text).not.toMatch(/^8\. [A-Z]/m);
    expect(text).toContain(`${everyFact.length - 7} more things`);
  });

  it("says of a quiet month what was looked at, and nothing to look at", () => {
    const text = reviewText(madeUpMonth(), madeUpReader, titled);
    expect(text).toContain("October 2026 was quiet");
    expect(text).toContain("Looked at: kiln hours");
    expect(text).not.toContain("To look at\n");
  });
});
