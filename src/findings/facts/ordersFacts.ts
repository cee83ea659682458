import type { OrdersFact } from "../../report/fact.ts";
import type { PromisedAgainstMade } from "../../report/reviewResult.ts";
import { noLoss } from "./factFrame.ts";

/** Orders that the house, at its own pace, will more likely than not fill late. */
export function ordersFacts(promised: PromisedAgainstMade | null): readonly OrdersFact[] {
  if (promised === null || promised.chanceLate === null || promised.loadsNeeded === 0) return [];
  const kilogramsShort = promised.varieties.reduce((sum, { shortKilograms }) => sum + shortKilograms, 0);
  return [
    {
      kind: "orders",
      kilogramsShort,
      chanceLate: promised.chanceLate,
      startFirst: promised.startFirst[0]?.variety ?? null,
      from: promised.asOf,
      to: promised.orders.reduce((latest, { dueAt }) => Math.max(latest, dueAt), promised.asOf),
      runs: [],
      runCount: 0,
      chanceReal: promised.chanceLate,
      loss: noLoss,
      beside: [],
    },
  ];
}
