import type { KilnThermostat } from "../report/thermostatResult.ts";
import { printDateInFull } from "../units/instant.ts";
import { print } from "../units/print.ts";
import { holdVerdict, isAlarmed } from "./holdVerdict.ts";
import { doubtSentence, loggerDoubts } from "./loggerDoubts.ts";
import { checkWays } from "./loggerTrust.ts";
import type { Sentence } from "./sentence.ts";
import { strong } from "./sentence.ts";
import { holdAnswer } from "./thermostatAnswer.ts";
import { degrees, type Reader } from "./thermostatWords.ts";

const DAY = 86_400_000;

/** What hangs by the kiln: what was found, and what to do about it in order. */
export interface KilnCard {
  readonly found: readonly Sentence[];
  /** In the order in which they are to be done. */
  readonly steps: readonly Sentence[];
}

const LOG_IT =
  "Log it: work on the thermostat in events.csv (calibration or repair), checks in logger-checks.csv. Loads after it are judged anew.";

/** The first thing to do in any case: without a sound logger nothing else is known. */
function checkLogger(kiln: KilnThermostat, altitudeMetres: number, reader: Reader): readonly Sentence[] {
  const doubted = loggerDoubts(kiln).length > 0;
  const [ice = [], boiling = []] = checkWays(kiln.logger.boilingCelsius, altitudeMetres, reader.units);
  return [
    [
      strong(doubted ? "Check the logger first; it may be the one that is off. " : "Check the logger once more. "),
      ...ice,
      ` If it is off by more than ${degrees(0.3, reader.units)}, mend the logger before anything else.`,
    ],
    [strong("Then hot. "), ...boiling],
  ];
}

/** What can be looked at from outside, in the order that the evidence gives. */
function outsideChecks(kiln: KilnThermostat): readonly Sentence[] {
  const alarmed = [kiln.drying, kiln.cure].filter((hold) => isAlarmed(holdVerdict(hold)));
  const speaksFor = new Set(
    alarmed.flatMap((hold) => hold?.evidence.filter(({ speaks }) => speaks === "for").map(({ kind }) => kind) ?? []),
  );
  const bulb: Sentence = [
    strong("Kiln cold, supply off: dial and bulb. "),
    "Is the dial where it was set? Does the bulb sit in its clip, clear of metal, dust and rootlets, its tube not kinked?",
  ];
  const air: Sentence = [
    strong("Heater and fan, supply locked off: "),
    "belt tight and not shiny, intake and floor free of dust, nothing lying on the elements.",
  ];
  const contacts: Sentence = [
    strong("Worn contacts "),
    "cannot be seen from outside: tell the electrician that the swing has grown.",
  ];
  const season: Sentence = [
    strong("Season: "),
    "look at the same weeks of last year on the chart before anything is turned.",
  ];
  const ordered = [
    ...(speaksFor.has("weak heater or fan") ? [air] : []),
    ...(speaksFor.has("season") ? [season] : []),
    bulb,
    ...(speaksFor.has("weak heater or fan") ? [] : [air]),
    ...(speaksFor.has("worn contacts") ? [contacts] : []),
  ];
  return ordered;
}

/** When the logger is next due for a check. */
function nextCheck({ logger }: KilnThermostat, { timeZone }: Reader): Sentence {
  const last = logger.checks.reduce((latest, { at }) => Math.max(latest, at), Number.NEGATIVE_INFINITY);
  if (!Number.isFinite(last)) return ["Check the logger and log it: no check of it is logged yet."];
  const due = printDateInFull(last + logger.loggerDays * DAY, timeZone);
  return [logger.stale ? "The logger’s check was due " : "The logger’s next check is due ", strong(due), "."];
}

/** The card of one kiln; null where nothing has been judged, so that nothing hangs by the kiln without ground. */
export function kilnCard(kiln: KilnThermostat, altitudeMetres: number, reader: Reader): KilnCard | null {
  const found = (["drying", "cure"] as const)
    .map((hold) => holdAnswer(kiln, hold, reader))
    .filter(({ length }) => length > 0);
  if (kiln.tooLittle !== null || found.length === 0) return null;
  const alarmed = [kiln.drying, kiln.cure].some((hold) => isAlarmed(holdVerdict(hold)));
  if (!alarmed) {
    const look: Sentence[] =
      loggerDoubts(kiln).length > 0
        ? [...checkLogger(kiln, altitudeMetres, reader)]
        : [["Nothing to set: leave the dial alone."]];
    return { found, steps: [...look, nextCheck(kiln, reader), [LOG_IT]] };
  }
  return {
    found: [...loggerDoubts(kiln).map((doubt) => doubtSentence(doubt, reader)), ...found],
    steps: [
      ...checkLogger(kiln, altitudeMetres, reader),
      ...outsideChecks(kiln),
      [
        strong("Only if the logger is sound: "),
        "have an electrician set the thermostat right against a reference, or change it.",
      ],
      [LOG_IT],
    ],
  };
}

/** By what it was judged: `Tolerance 1.5 °C either side; water boils here at 99.6 °C.` */
export function cardFoot({ toleranceKelvin, logger }: KilnThermostat, { units }: Reader): string {
  const boiling = print(logger.boilingCelsius, "temperature", units, { decimals: 1 });
  return `Tolerance ${degrees(toleranceKelvin, units)} either side; water boils here at ${boiling}.`;
}
