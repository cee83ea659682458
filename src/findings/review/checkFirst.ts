import type { Fact } from "../../report/fact.ts";
import type { ReviewFinding } from "../../report/reviewResult.ts";

/** The usual order of looking, cheapest first (common practice). Nothing here asks anybody to open what a licensed hand should. */
const CHECKS: Readonly<Record<Fact["kind"], readonly string[]>> = {
  "kiln hours": [
    "Look at air: filter, damper, belt and fan.",
    "Then at the bed: depth, levelling, lumps.",
    "Then at what is logged as loaded and unloaded.",
  ],
  chart: [
    "Look at what was logged about those days.",
    "Weigh a known mass, and hold the meter against an oven sample.",
    "Then look at the kiln.",
  ],
  "uneven batch": [
    "Look where in the bed the damp samples came from.",
    "Level and turn; look for lumps and for leaks of air at the sides.",
  ],
  thermostat: [
    "Is the logger right? Ice point, then boiling water, with care for scalds.",
    "Then hold the set point against a trusted thermometer.",
    "Opening a thermostat is a licensed electrician’s work.",
  ],
  logger: ["Ice point, then boiling water, with care for scalds; write both into logger-checks.csv."],
  energy: [
    "Look at doors, dampers and the air that leaves: is it still dry at the end?",
    "Then at the meter’s reading times.",
  ],
  "power limit": [
    "Look whether all elements or burners work; a licensed hand opens them.",
    "Load less, or ask less of the drying hold, in the coldest weeks.",
  ],
  heater: [
    "Look whether all elements or burners work; a licensed hand opens them.",
    "Then at doors and leaks between heater and bed.",
  ],
  variety: ["Look at the lots it was made from, and at the measure that costs it most."],
  lot: [
    "Hold a sample of the lot against another: moisture, protein, germinative energy.",
    "Keep it for one customer, or blend it knowingly.",
  ],
  steep: [
    "Look at water temperature and at the hours as they were, not as planned.",
    "Weigh drained; hold the moisture meter against an oven sample.",
  ],
  bed: ["Put a thermometer in the middle of both beds.", "Look at air, spraying and turning of the bed that lags."],
  timetable: ["Move the unloading by the hours named, or the bed’s temperature; count acrospires a day before."],
  laboratory: [
    "Hold the house’s meter against an oven sample of the same malt.",
    "Look how long samples lay before they were tested.",
  ],
  logs: ["The Logs page names file, line and column."],
  orders: ["Start the variety named first, or tell the customer today."],
};

const AIR: readonly string[] = [
  "Fan belt, damper, filter: is as much air coming through as before?",
  "Then heater and set points.",
  "Then the bed: depth, levelling, lumps.",
];

const SCALE: readonly string[] = [
  "Weigh a known mass, empty and in the middle of the range.",
  "Then hold the moisture meter against an oven sample.",
];

/** What to check first, in order. */
export function checkFirst({ cause, facts }: ReviewFinding): readonly string[] {
  if (cause === "kiln air") return AIR;
  if (cause === "scale") return SCALE;
  const [first] = facts;
  if (first === undefined) return [];
  return first.kind === "steep" && first.shape !== "shift" ? SCALE : CHECKS[first.kind];
}
