import type { HoldName, KilnThermostat, ThermostatResult } from "../report/thermostatResult.ts";
import { printDateInFull } from "../units/instant.ts";
import { counted } from "./counted.ts";
import { type ChangeVerdict, type HoldVerdict, holdVerdict, isAlarmed } from "./holdVerdict.ts";
import { leavesClause, leftItsTolerance, type ToleranceWords } from "./leavesSentence.ts";
import { doubtSentence, loggerDoubts } from "./loggerDoubts.ts";
import { errorWords } from "./loggerTrust.ts";
import { joinSentences, lowerFirst, type Sentence, strong } from "./sentence.ts";
import { besideSetPoint, degrees, type Reader, startOfStretch, thermostatName, way } from "./thermostatWords.ts";
import { roughDate } from "./yieldMoistureAnswer.ts";

const HOLDS: readonly HoldName[] = ["drying", "cure"];

/** When the kiln was last loaded: what lies before it is no forecast, though this hold may have been read last some loads ago. */
const lastLoadAt = ({ loads }: KilnThermostat): number =>
  loads.reduce((last, { loadedAt }) => Math.max(last, loadedAt), Number.NEGATIVE_INFINITY);

/** What the tolerance of a kiln's thermostats is held against. */
export function toleranceWords(kiln: KilnThermostat, reader: Reader): ToleranceWords {
  const { toleranceKelvin, probeAtBulb } = kiln;
  return { ...reader, toleranceKelvin, probeAtBulb, now: lastLoadAt(kiln) };
}

/** `has crept down 1.1 °C since the end of August, 0.55 °C a month`. */
function changeWords(verdict: ChangeVerdict, now: number, { units, timeZone }: Reader): Sentence {
  const { kind, models, movedKelvin } = verdict;
  const size = strong(`${way(movedKelvin)} ${degrees(movedKelvin, units)}`);
  const { onset, kelvinPerMonth } = models;
  if (kind === "creep") {
    const since = onset === null ? "" : ` since ${roughDate(onset.estimate, now, timeZone)}`;
    const rate = kelvinPerMonth === null ? "" : `, ${degrees(kelvinPerMonth.estimate, units, 2)} a month`;
    return ["has crept ", size, `${since}${rate}`];
  }
  return ["stepped ", size, onset === null ? "" : ` about ${printDateInFull(onset.estimate, timeZone)}`];
}

/** `, 0.4 °C below its set point`; where it lies outside its tolerance that is what matters. */
function levelWords(verdict: Extract<HoldVerdict, { kind: "steady" }>, words: ToleranceWords): Sentence {
  const { models } = verdict.stretch;
  if (models === null || !words.probeAtBulb) return [];
  const { levelNow, kind } = models.leaves;
  if (kind === "already-outside") {
    return [
      ", but ",
      strong(`${besideSetPoint(levelNow.estimate, words.units)}, outside its tolerance`),
      ` of ${degrees(words.toleranceKelvin, words.units)}`,
    ];
  }
  return [`, ${besideSetPoint(levelNow.estimate, words.units)}`];
}

/** One hold in one sentence. Empty where there is nothing of it. */
export function holdAnswer(kiln: KilnThermostat, hold: HoldName, reader: Reader): Sentence {
  const judgement = kiln[hold];
  const verdict = holdVerdict(judgement);
  if (judgement === null || verdict.kind === "none") return [];
  const words = toleranceWords(kiln, reader);
  const the = `The ${thermostatName[hold]} `;
  switch (verdict.kind) {
    case "tooFew": {
      const { loads } = verdict.stretch;
      const since = startOfStretch(verdict.stretch);
      return [
        the,
        loads === 0 ? "has run no load since " : `cannot be judged yet: ${counted(loads, "load")} since `,
        `${since}.`,
      ];
    }
    case "steady":
      if (verdict.ended !== null) {
        const { raisedAt, endedAt } = verdict.ended;
        const dates = [raisedAt, endedAt].map((at) => printDateInFull(at, reader.timeZone));
        return [
          the,
          "is ",
          strong("steady again"),
          ...levelWords(verdict, words),
          `: the alarm of ${dates[0]} ended by itself on ${dates[1]}.`,
        ];
      }
      return [
        the,
        "has been ",
        strong("steady"),
        ` since ${startOfStretch(verdict.stretch)}`,
        ...levelWords(verdict, words),
        ".",
      ];
    case "unexplained":
      return [
        the,
        "has been running ",
        strong(verdict.direction === "up" ? "high" : "low"),
        ` since ${startOfStretch(verdict.stretch)}, neither in a step nor in a creep that can be told from scatter.`,
      ];
    default:
      return [the, ...changeWords(verdict, words.now, reader), ...leavesClause(verdict.models.leaves, words), "."];
  }
}

/** Both holds steady since the same day are one sentence. */
function bothSteady(kiln: KilnThermostat): Sentence {
  const [drying, cure] = [holdVerdict(kiln.drying), holdVerdict(kiln.cure)];
  if (drying.kind !== "steady" || cure.kind !== "steady" || drying.ended !== null || cure.ended !== null) return [];
  const [one, other] = [startOfStretch(drying.stretch), startOfStretch(cure.stretch)];
  const quiet = [drying, cure].every(({ stretch }) => stretch.models?.leaves.kind !== "already-outside");
  if (one !== other || !quiet) return [];
  return [
    "The drying and the cure thermostat have been ",
    strong("steady"),
    ` since ${startOfStretch(drying.stretch, "their")}.`,
  ];
}

/**
 * A cure that does what the drying hold does is said in short: by how much, and when it leaves its tolerance if that is sooner,
 * or that it may have.
 * Empty where it does not.
 */
function cureLikewise(kiln: KilnThermostat, reader: Reader): Sentence {
  const { units, timeZone } = reader;
  const [drying, cure] = [holdVerdict(kiln.drying), holdVerdict(kiln.cure)];
  if (!("movedKelvin" in drying && "movedKelvin" in cure) || drying.kind !== cure.kind) return [];
  const [first, second] = [drying.models.leaves, cure.models.leaves];
  if (drying.movedKelvin * cure.movedKelvin <= 0 || first.kind !== "dated" || second.kind !== "dated") return [];
  const words = toleranceWords(kiln, reader);
  const sooner = second.earliest < first.earliest;
  if (sooner && first.earliest <= words.now) return [];
  const outside: Sentence = !sooner
    ? ["."]
    : second.earliest > words.now
      ? [`, and may be outside sooner, from ${printDateInFull(second.earliest, timeZone)} on.`]
      : [", and may ", strong("already"), ` have ${leftItsTolerance(words)}.`];
  return [
    `The cure thermostat ${cure.kind === "creep" ? "has crept" : "stepped"} likewise, `,
    strong(`${way(cure.movedKelvin)} ${degrees(cure.movedKelvin, units)}`),
    ...outside,
  ];
}

/** A sentence as the rest of another. */
function carriedOn([first, ...rest]: Sentence): Sentence {
  return typeof first === "string" ? [lowerFirst(first), ...rest] : rest;
}

/** What a kiln's thermostats do; where the logger may be off and something is alarmed, that comes first. */
function kilnAnswer(kiln: KilnThermostat, reader: Reader): Sentence {
  if (kiln.tooLittle !== null) return [kiln.tooLittle];
  const both = bothSteady(kiln);
  const likewise = cureLikewise(kiln, reader);
  const cure = likewise.length > 0 ? likewise : holdAnswer(kiln, "cure", reader);
  const said = both.length > 0 ? [both] : [holdAnswer(kiln, "drying", reader), cure];
  const alarmed = HOLDS.some((hold) => isAlarmed(holdVerdict(kiln[hold])));
  const [doubt] = alarmed ? loggerDoubts(kiln) : [];
  const answer =
    doubt === undefined
      ? joinSentences(said)
      : joinSentences([doubtSentence(doubt, reader), ["By its readings ", ...carriedOn(joinSentences(said))]]);
  return answer.length > 0 ? answer : ["No load has readings from which its thermostats can be judged yet."];
}

/** The page's first sentence: is the thermostat drifting, how fast, and when will it matter? Or is it the logger that is off? */
export function thermostatAnswer({ kilns }: ThermostatResult, reader: Reader): Sentence {
  const [first] = kilns;
  if (first === undefined) return ["No readings of a kiln are logged yet, so its thermostats cannot be judged."];
  if (kilns.length === 1) return kilnAnswer(first, reader);
  return joinSentences(kilns.map((kiln): Sentence => [`Kiln ${kiln.kiln}: `, ...kilnAnswer(kiln, reader)]));
}

/** `Read from 96 loads in the drying hold and 95 loads in the cure.`, and what keeps it from being an absolute number. */
function kilnGrounds(kiln: KilnThermostat, { units }: Reader): Sentence {
  const counts = HOLDS.flatMap((hold) => {
    const points = kiln[hold]?.points.length ?? 0;
    return points === 0
      ? []
      : [`${counted(points, "load")} ${hold === "drying" ? "in the drying hold" : "in the cure"}`];
  });
  if (counts.length === 0) return [];
  const { errorKelvin, daysSinceCheck } = kiln.logger;
  const checked =
    daysSinceCheck === null
      ? " The logger has never been checked."
      : ` The logger was last checked ${counted(Math.floor(daysSinceCheck), "day")} before the last load${
          errorKelvin === null ? "" : ` and then read ${errorWords(errorKelvin, units)}`
        }.`;
  const bulb = kiln.probeAtBulb
    ? ""
    : " The logger’s probe is not at the thermostat’s bulb, so only changes are given, no errors.";
  const tolerance = ` Tolerance: ${degrees(kiln.toleranceKelvin, units)} either side.`;
  return [`Read from ${counts.join(" and ")}.${tolerance}${checked}${bulb}`];
}

/** What the answer rests on: loads read, how far the logger can be trusted, further grounds to suspect it. */
export function thermostatGrounds({ kilns }: ThermostatResult, reader: Reader): readonly Sentence[] {
  return kilns.map((kiln) => {
    const alarmed = HOLDS.some((hold) => isAlarmed(holdVerdict(kiln[hold])));
    const further = alarmed ? loggerDoubts(kiln).slice(1) : loggerDoubts(kiln);
    const grounds = joinSentences([kilnGrounds(kiln, reader), ...further.map((doubt) => doubtSentence(doubt, reader))]);
    return kilns.length === 1 || grounds.length === 0 ? grounds : [`Kiln ${kiln.kiln}: `, ...grounds];
  });
}
