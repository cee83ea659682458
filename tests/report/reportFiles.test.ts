import { describe, expect, it } from "vitest";
import type { Report, ReportRows } from "../../src/report/report.ts";
import { pieceFile, reportFiles } from "../../src/report/reportFiles.ts";
import { parseReport } from "../../src/report/reportJson.ts";
import { madeUpReport } from "../support/madeUpReport.ts";

const report = madeUpReport(20);

describe("reportFiles(report)", () => {
  it("puts the report into pieces that make it whole again", () => {
    const { digest, files } = reportFiles(report);
    const piece = <T>(name: Parameters<typeof pieceFile>[0]): T =>
      parseReport<T>(new TextDecoder().decode(files.get(pieceFile(name, digest))));
    const again: Report = {
      ...piece<ReportRows>("rows"),
      kilnHours: piece("kilnHours"),
      yieldMoisture: piece("yieldMoisture"),
      thermostat: piece("thermostat"),
      varieties: piece("varieties"),
      steepGermination: piece("steepGermination"),
      changes: piece("changes"),
      review: piece("review"),
    };
    expect(again).toEqual(report);
    expect(files.size).toBe(8);
  });

  it("names them by the whole report, so that no page reads a piece of another one", () => {
    const other = { ...report, lastLoggedAt: (report.lastLoggedAt ?? 0) + 1 };
    const [one, two] = [reportFiles(report), reportFiles(other)];
    expect(one.digest).not.toBe(two.digest);
    expect(reportFiles(report).digest).toBe(one.digest);
    expect([...two.files.keys()].every((name) => name.includes(two.digest))).toBe(true);
  });
});
