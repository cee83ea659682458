import type { Fact } from "../../report/fact.ts";
import { print, printNumber } from "../../units/print.ts";
import { measureName, points } from "../chartWords.ts";
import { counted, countedInWords, listed } from "../counted.ts";
import { errorWords } from "../loggerTrust.ts";
import { degrees, thermostatName, way } from "../thermostatWords.ts";
import { columnWords } from "../varieties/columnWords.ts";
import { FIELD_WORDS } from "./factWhat.ts";
import { heaterShort } from "./heaterWords.ts";
import type { ReviewReader } from "./reader.ts";

const batches = (count: number): string => countedInWords(count, "batch", "batches");

const MOVED = {
  creep: "has crept",
  step: "has stepped",
  unexplained: "has moved",
  "worn contacts": "has moved",
  "weak heater or fan": "has moved",
} as const;

/** A fact as a headline says it: one clause that begins a sentence, without intervals, dates and doubts. */
export function factShort(fact: Fact, { units }: ReviewReader): string {
  switch (fact.kind) {
    case "kiln hours": {
      const { estimate } = fact.hoursOver;
      const size = print(Math.abs(estimate), "hours", "metric");
      return `${batches(fact.runCount)} took ${size} ${estimate > 0 ? "longer" : "less"} in the kiln than air and bed account for`;
    }
    case "chart": {
      const off = `${points(fact.size)} ${fact.size > 0 ? "high" : "low"}`;
      if (fact.single) return `The ${measureName[fact.measure]} of batch ${fact.runs[0] ?? ""} was ${off}`;
      const whose = fact.variety === null ? "" : ` of ${fact.variety}`;
      return `${fact.measure === "dry_yield_pct" ? "Yield" : "Moisture"}${whose} has run ${off}`;
    }
    case "uneven batch":
      return fact.runCount === 1
        ? `Batch ${fact.runs[0] ?? ""} was uneven in moisture`
        : `${batches(fact.runCount)} were uneven in moisture`;
    case "thermostat":
      if (fact.widerKelvin !== null)
        return `The ${thermostatName[fact.hold]} of kiln ${fact.kiln} switches on and off ${degrees(fact.widerKelvin.estimate, units)} further apart`;
      return `The ${thermostatName[fact.hold]} of kiln ${fact.kiln} ${MOVED[fact.shape]} ${way(fact.movedKelvin)} ${degrees(fact.movedKelvin, units)}`;
    case "logger":
      if (fact.errorKelvin !== null)
        return `The logger of kiln ${fact.kiln} was found ${errorWords(fact.errorKelvin, units)}`;
      return `The logger of kiln ${fact.kiln} ${fact.daysSinceCheck === null ? "has never been checked" : "is due for a check"}`;
    case "energy":
      return `The kiln took ${print(fact.perKilogramOver.estimate, "energyPerMass", units)} more for its water than air and bed account for`;
    case "power limit":
      return `The heater could not hold the drying temperature in ${printNumber(fact.loads, 0)} of ${counted(fact.ofLoads, "load")}`;
    case "heater":
      return heaterShort(fact);
    case "variety":
      return `${fact.variety} meets every tolerance in ${printNumber(fact.onTarget, 0)} of 100 batches`;
    case "lot": {
      const { words, difference } = columnWords(fact.measure);
      const off =
        fact.uneven || fact.size === null
          ? `is uneven in itself in ${words}`
          : `lies ${print(Math.abs(fact.size.estimate), difference, units)} ${fact.size.estimate > 0 ? "higher" : "lower"} in ${words}`;
      return `Lot ${fact.lot} of ${fact.variety} ${off}`;
    }
    case "steep": {
      if (fact.shape === "bias moved")
        return "Moisture meter and scale no longer agree on steep-out moisture as they did";
      const off = `${points(fact.points.estimate)} ${fact.points.estimate > 0 ? "above" : "below"}`;
      return fact.shape === "bias"
        ? `Measured steep-out moisture lies ${off} what the gain in mass says`
        : `Batches came out of the steep ${off} the house’s usual`;
    }
    case "bed":
      return `Bed ${fact.bed} grows ${fact.difference.estimate > 0 ? "longer" : "shorter"} than it used to against the beds beside it`;
    case "timetable": {
      const { estimate } = fact.lengthOver;
      return `Batches grew ${printNumber(Math.abs(estimate), 2)} of a kernel ${estimate > 0 ? "beyond" : "short of"} the target`;
    }
    case "laboratory": {
      const { estimate } = fact.points;
      if (fact.moved)
        return `The house’s moisture has moved ${points(estimate)} ${estimate > 0 ? "up" : "down"} against the laboratory’s`;
      return `The house’s moisture reads ${points(estimate)} ${estimate > 0 ? "above" : "below"} the laboratory’s`;
    }
    case "logs": {
      if (fact.missing.length > 0)
        return `${capital(listed(fact.missing.map((field) => FIELD_WORDS[field] ?? field)))} stopped being logged`;
      const faults = fact.rowsSetAside + fact.valuesBlanked;
      return `${countedInWords(faults, "fault")} in the logs cost something of ${counted(fact.runCount, "batch", "batches")}`;
    }
    case "orders":
      return `Orders lack ${print(fact.kilogramsShort, "mass", units)} of malt`;
  }
}

const capital = (text: string): string => `${text.charAt(0).toUpperCase()}${text.slice(1)}`;
