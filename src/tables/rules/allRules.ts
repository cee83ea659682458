import { acrospireSums } from "./acrospireSums.ts";
import { datesAhead } from "./datesAhead.ts";
import { deliveriesOverMade } from "./deliveriesOverMade.ts";
import { duplicateKeys } from "./duplicateKeys.ts";
import { duplicateRuns } from "./duplicateRuns.ts";
import { endBeforeStart } from "./endBeforeStart.ts";
import { maltOverGrain } from "./maltOverGrain.ts";
import { readingsGap } from "./readingsGap.ts";
import { readingsJump } from "./readingsJump.ts";
import { readingsStandStill } from "./readingsStandStill.ts";
import { repeatedRows } from "./repeatedRows.ts";
import type { Rule } from "./rule.ts";
import { stagesOutOfStep } from "./stagesOutOfStep.ts";
import { targetsOutOfOrder } from "./targetsOutOfOrder.ts";
import { unknownCustomers } from "./unknownCustomers.ts";
import { unknownKilns } from "./unknownKilns.ts";
import { unknownLots } from "./unknownLots.ts";
import { unknownRuns } from "./unknownRuns.ts";
import { yieldOverWhole } from "./yieldOverWhole.ts";

/** Every cross-row rule, in the order in which they run: what sets rows aside first, so that the others do not see them. */
export const allRules: readonly Rule[] = [
  repeatedRows,
  duplicateKeys,
  duplicateRuns,
  unknownLots,
  unknownRuns,
  unknownCustomers,
  unknownKilns,
  endBeforeStart,
  stagesOutOfStep,
  maltOverGrain,
  yieldOverWhole,
  acrospireSums,
  targetsOutOfOrder,
  deliveriesOverMade,
  readingsStandStill,
  readingsJump,
  readingsGap,
  datesAhead,
];
