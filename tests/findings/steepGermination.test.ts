import { describe, expect, it } from "vitest";
import { plainText, type Sentence } from "../../src/findings/sentence.ts";
import {
  evennessSentence,
  isOvergrown,
  lengthSentence,
  lengthStanding,
  overgrownSentence,
} from "../../src/findings/steepGermination/acrospireSentences.ts";
import {
  bedsClause,
  bedsSentence,
  lagSentence,
  lagsSentence,
} from "../../src/findings/steepGermination/bedSentences.ts";
import { middleOf } from "../../src/findings/steepGermination/measureWords.ts";
import { steepGerminationAnswer } from "../../src/findings/steepGermination/steepGerminationAnswer.ts";
import {
  biasSentence,
  chitSentence,
  steepOutSaid,
  steepOutSentence,
  steepStanding,
} from "../../src/findings/steepGermination/steepSentences.ts";
import {
  lengthOnTemperatureSentence,
  suitedCelsius,
  timetableBatchesSentence,
  timetableSentence,
} from "../../src/findings/steepGermination/timetableSentences.ts";
import { hoursToTargetSentence, waterSentence } from "../../src/findings/steepGermination/uptakeSentences.ts";
import type { UptakeModel } from "../../src/report/steepGerminationResult.ts";
import { acrospire, around, nothing, steep, timetableOf } from "./handMadeFloor.ts";

const said = (sentence: Sentence): string => plainText(sentence).replaceAll("\u00a0", " ");

describe("steepStanding(steeps)", () => {
  it("counts what lies outside the range and takes the ends of it as met", () => {
    const steeps = [steep(1, 43), steep(2, 42.9), steep(3, 46), steep(4, 46.1), steep(5, null)];
    const standing = steepStanding(steeps);
    expect(standing.judged).toBe(4);
    expect([standing.under, standing.over]).toEqual([["R2"], ["R4"]]);
    expect(standing.meanOffAim).toLieWithin(0, 1e-9);
  });

  it("judges nothing without a target", () => {
    expect(steepStanding([steep(1, 40, { target: null })]).judged).toBe(0);
    expect(steepOutSentence([steep(1, 40, { target: null })])).toEqual([]);
    expect(said(steepOutSaid([steep(1, 40, { target: null })]))).toContain("held against nothing");
  });
});

describe("steepOutSentence(steeps)", () => {
  it("says how many met their range and how far the whole lies off its aim", () => {
    expect(said(steepOutSentence([steep(1, 43.5), steep(2, 42), steep(3, 44)]))).toBe(
      "Steep-out moisture met its range in 2 of 3 batches, on the whole 1.3 points under its target.",
    );
  });

  it("calls a mean within what a meter tells on its aim", () => {
    expect(said(steepOutSentence([steep(1, 44.4), steep(2, 44.7)]))).toBe(
      "Steep-out moisture met its range in all 2 batches and is on its target on the whole.",
    );
  });
});

describe("chitSentence(chitted)", () => {
  it("names how many stayed under what is asked for, or that none did", () => {
    const chitted = { batches: 40, medianPercent: 86, below: ["R3", "R9"], lowPercent: 80 };
    expect(said(chitSentence(chitted))).toMatch(
      /86 % in the middle one of 40 batches; 2 of them stayed under the 80 %/,
    );
    expect(said(chitSentence({ ...chitted, below: [] }))).toContain("never under the 80 %");
    expect(chitSentence(null)).toEqual([]);
  });
});

describe("biasSentence(bias)", () => {
  const bias = { batches: 64, limits: [-0.4, 1.1] as const, differences: [] };
  it("says which of the two reads higher and what does that", () => {
    const high = said(biasSentence({ ...bias, meanPoints: around(0.34, 0.09), clear: true }));
    expect(high).toContain("Measured moisture reads 0.34 points above moisture from mass gain (0.25 to 0.43 points");
    expect(high).toContain("leached");
    const low = said(biasSentence({ ...bias, meanPoints: around(-0.34, 0.09), clear: true }));
    expect(low).toContain("0.34 points below");
    expect(low).toContain("Drain longer");
  });

  it("claims no bias whose interval holds 0", () => {
    expect(said(biasSentence({ ...bias, meanPoints: around(0.05, 0.1), clear: false }))).toContain("which holds 0");
  });
});

const uptake: UptakeModel = {
  batches: 60,
  basis: "from mass gain",
  pointsPerWetHour: around(0.4, 0.1),
  pointsPerKelvin: around(0.18, 0.05),
  residualPoints: 0.5,
  rSquared: 0.6,
  unlikeTheRest: [],
  allowedForBiasPoints: null,
  hoursToTarget: [],
  points: [],
  lines: [],
};

describe("waterSentence(uptake, units)", () => {
  it("says a degree of the reader's own thermometer", () => {
    expect(said(waterSentence(uptake, "metric"))).toContain(
      "Each degree warmer in the water goes with 0.18 points more",
    );
    expect(said(waterSentence(uptake, "us"))).toContain(
      "Each degree Fahrenheit warmer in the water goes with 0.10 points",
    );
  });

  it("claims nothing where the interval holds 0", () => {
    expect(said(waterSentence({ ...uptake, pointsPerKelvin: around(0.02, 0.05) }, "metric"))).toContain("do not show");
  });
});

describe("hoursToTargetSentence(row, units)", () => {
  const row = {
    variety: "Amber",
    targetPercent: 44.5,
    usualWetHours: 12,
    usualPercent: 44,
    usualWaterCelsius: 11.5,
    wetHours: around(13.2, 0.8),
    refusal: null,
  };
  it("sets the hours beside those that the variety gets", () => {
    expect(said(hoursToTargetSentence(row, "metric"))).toBe(
      "Amber would have met 44.5 % after 13.2 h wet (12.4 to 14.0) in water of 11.5 °C: 1.2 h more than it usually gets.",
    );
  });

  it("does not tell hours apart that their interval does not", () => {
    expect(said(hoursToTargetSentence({ ...row, wetHours: around(12.5, 0.8) }, "metric"))).toContain(
      "its usual 12.0 h may well be right",
    );
  });

  it("hands on a refusal", () => {
    expect(
      said(hoursToTargetSentence({ ...row, wetHours: null, refusal: "It lies outside the hours logged." }, "metric")),
    ).toBe("Amber: it lies outside the hours logged.");
  });
});

describe("lengthStanding(run)", () => {
  it("calls a batch short or long only where counting error cannot have done it", () => {
    expect(lengthStanding(acrospire(1, 0.6))).toBe("short");
    expect(lengthStanding(acrospire(1, 0.62))).toBe("unsure");
    expect(lengthStanding(acrospire(1, 0.78))).toBe("within");
    expect(lengthStanding(acrospire(1, 0.92))).toBe("unsure");
    expect(lengthStanding(acrospire(1, 0.95))).toBe("long");
    expect(lengthStanding(acrospire(1, 0.6, { targets: null }))).toBe("no target");
  });
});

describe("lengthSentence(runs)", () => {
  it("says the middle one and how many were short and long", () => {
    const runs = [0.5, 0.55, 0.7, 0.8, 0.98].map((mean, i) => acrospire(i, mean));
    expect(said(lengthSentence(runs))).toBe(
      "Malt comes off at 0.70 of the kernel’s length (the middle one of 5 batches); beyond counting error 2 were short of its range and 1 long.",
    );
  });

  it("says none where none was, and nothing without counts", () => {
    expect(said(lengthSentence([acrospire(1, 0.62), acrospire(2, 0.7)]))).toContain("in no batch short or long");
    expect(lengthSentence([])).toEqual([]);
  });
});

describe("evennessSentence(runs) and overgrownSentence(runs)", () => {
  it("say shares of the middle batch and which batches grew over beyond counting error", () => {
    const over = acrospire(2, 0.9, { overgrownPercent: { estimate: 24, low: 17, high: 33 } });
    const unsure = acrospire(3, 0.9, { overgrownPercent: { estimate: 18, low: 11.7, high: 27 } });
    expect(isOvergrown(unsure)).toBe(false);
    expect(said(evennessSentence([acrospire(1, 0.7), over, unsure]))).toContain(
      "87 % of the kernels lie between half and full",
    );
    expect(said(overgrownSentence([acrospire(1, 0.7), over, unsure]))).toBe(
      "1 batch had more than 15 % overgrown beyond counting error, the latest R2: 24 % (17 to 33 %).",
    );
    expect(said(overgrownSentence([unsure]))).toContain("No batch had more than 15 %");
  });
});

describe("timetableSentence(timetable, units)", () => {
  it("says which bed the hours suit and how far off they are at both ends", () => {
    const timetable = timetableOf([around(18, 3), around(9, 2), around(-3, 2)]);
    expect(suitedCelsius(timetable)).toLieWithin(14.75, 1e-9);
    expect(said(timetableSentence(timetable, "metric"))).toBe(
      "96 h on the floor suit a bed at about 14.8 °C; malt comes off 18 h too soon at 13 °C and 3 h too late at 15 °C.",
    );
    expect(said(timetableSentence(timetable, "us"))).toContain("at about 59 °F; malt comes off 18 h too soon at 55 °F");
  });

  it("says that it suits every bed where no interval keeps clear of the timetable", () => {
    expect(said(timetableSentence(timetableOf([around(2, 3), around(-1, 3)]), "metric"))).toBe(
      "96 h on the floor suit every bed that the counts cover, 13 to 14 °C.",
    );
  });

  it("says that it suits none where all beds are off the same way", () => {
    expect(said(timetableSentence(timetableOf([around(20, 3), around(8, 3)]), "metric"))).toBe(
      "96 h on the floor suit none of the beds that the counts cover, 13 to 14 °C: malt comes off 20 h too soon at 13 °C and 8 h too soon at 14 °C.",
    );
  });
});

describe("timetableBatchesSentence(timetable, runs)", () => {
  const timetable = timetableOf([around(12, 3), around(0, 3), around(-12, 3)]);
  it("counts batches by the hours between the rows, and those outside apart", () => {
    const beds = [13.2, 13.4, 13.6, 14.6, 16, 12];
    const runs = beds.map((bedMeanCelsius, i) => acrospire(i, 0.7, { bedMeanCelsius }));
    expect(said(timetableBatchesSentence(timetable, runs))).toBe(
      "Of 4 batches in such beds 2 came off more than 6 h too soon and 1 as much too late. Two batches lay in cooler or warmer beds, of which the counts say nothing.",
    );
  });

  it("is empty where no bed temperature is logged", () => {
    expect(timetableBatchesSentence(timetable, [acrospire(1, 0.7, { bedMeanCelsius: null })])).toEqual([]);
  });
});

describe("lengthOnTemperatureSentence(fit, units)", () => {
  it("claims no more than its interval", () => {
    const fit = { batches: 50, perKelvin: around(0.054, 0.009), line: [] };
    expect(said(lengthOnTemperatureSentence(fit, "us"))).toContain(
      "0.030 of the kernel more at unloading (0.025 to 0.035;",
    );
    expect(said(lengthOnTemperatureSentence({ ...fit, perKelvin: around(0.01, 0.02) }, "metric"))).toContain(
      "do not show",
    );
  });
});

describe("bedsSentence(beds, units) and its clause", () => {
  const lagging = { bed: "B3", runs: 12, difference: around(-0.06, 0.02), warmerByKelvin: -0.9 };
  it("names the bed that lags on the whole, by how much and how much cooler it is", () => {
    const beds = { compared: 14, lags: [], byBed: [lagging] };
    expect(said(bedsSentence(beds, "metric"))).toBe(
      "Bed B3 lags by 0.06 of the kernel (−0.08 to −0.04; 12 batches, 0.9 °C cooler on the whole), against the other beds of the same batches, 14 batches compared.",
    );
    expect(said(bedsClause(beds))).toContain("Bed B3 lags the others of its batches by 0.06 of the kernel.");
  });

  it("blames no bed whose interval holds 0, and still tells of single batches", () => {
    const lag = { run: "R4", bed: "B2", at: 0, difference: around(-0.09, 0.05), p: 0.02, coolerByKelvin: 0.8 };
    const beds = { compared: 14, lags: [lag], byBed: [{ ...lagging, difference: around(-0.01, 0.02) }] };
    expect(said(bedsSentence(beds, "metric"))).toContain("No bed lags on the whole");
    expect(said(bedsClause(beds))).toBe("No bed lags on the whole, but in 1 of 14 batches one stood apart.");
    expect(said(lagsSentence(beds))).toContain("which the batch’s mean would hide");
    expect(said(lagSentence(lag, "metric"))).toBe(
      "bed B2: 0.09 of the kernel behind the others (0.04 to 0.14); it stood 0.8 °C cooler.",
    );
    expect(said(lagSentence({ ...lag, coolerByKelvin: 0.1 }, "metric"))).toContain("look at turning, depth and water");
    expect(said(lagSentence({ ...lag, coolerByKelvin: -0.8 }, "metric"))).toContain(
      "0.8 °C warmer, which does not explain it",
    );
  });

  it("says nothing where no batch has two beds", () => {
    expect(bedsSentence(nothing.beds, "metric")).toEqual([]);
    expect(bedsClause(nothing.beds)).toEqual([]);
  });
});

describe("steepGerminationAnswer(result, units)", () => {
  it("says what is lacking where nothing is logged", () => {
    expect(said(steepGerminationAnswer(nothing, "metric"))).toBe(
      "No steep is logged among these batches. No kernels were counted at unloading in these batches.",
    );
  });

  it("claims hours only from counts on the way, else length by temperature, else length alone", () => {
    const acrospires = [acrospire(1, 0.7), acrospire(2, 0.8)];
    expect(said(steepGerminationAnswer({ ...nothing, acrospires }, "metric"))).toMatch(/^Malt comes off at 0\.75/);
    const lengthOnTemperature = { batches: 30, perKelvin: around(0.06, 0.01), line: [] };
    const warmer = said(steepGerminationAnswer({ ...nothing, acrospires, lengthOnTemperature }, "metric"));
    expect(warmer).toMatch(/^Each degree warmer in the bed leaves the malt 0\.06 of the kernel longer at unloading\./);
    expect(warmer).not.toMatch(/too soon|too late/);
  });
});

describe("middleOf(values)", () => {
  it("takes the middle one, or the mean of the middle two, in any order", () => {
    expect(middleOf([3, 1, 2])).toBe(2);
    expect(middleOf([4, 1, 3, 2])).toBe(2.5);
    expect(middleOf([])).toBeNull();
  });
});
