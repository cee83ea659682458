import type { Fact } from "../../report/fact.ts";
import { varietyPath } from "../../units/varietyPath.ts";

/** Where a fact stands in the site: path from the root, with the entry's anchor. */
export function factPath(fact: Fact): string {
  switch (fact.kind) {
    case "kiln hours":
      return "kiln-hours/#evidence";
    case "energy":
      return "kiln-hours/#energy";
    case "power limit":
      return "kiln-hours/#left-out";
    case "chart":
    case "uneven batch":
      return `yield-and-moisture/#${(fact.kind === "chart" ? fact.measure : "final_moisture_pct").replaceAll("_", "-")}`;
    case "thermostat":
    case "logger":
    case "heater":
      return "thermostat/";
    case "variety":
      return varietyPath(fact.variety);
    case "lot":
      return `${varietyPath(fact.variety)}#lots-of-grain`;
    case "laboratory":
      return "varieties/#scores";
    case "steep":
      return `steep-and-germination/#${fact.shape === "shift" ? "steep" : "bias"}`;
    case "bed":
      return "steep-and-germination/#beds";
    case "timetable":
      return "steep-and-germination/#timetable";
    case "logs":
      return "logs/";
    case "orders":
      return "#promised";
  }
}
