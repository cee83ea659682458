import type { SharedPagesResult } from "../report/sharing/sharedPagesResult.ts";
import { printDateInFull } from "../units/instant.ts";
import { counted } from "./counted.ts";
import { type Sentence, strong } from "./sentence.ts";

/** `31 October 2026` for `2026-10-31`. */
const inFull = (isoDate: string): string => printDateInFull(Date.parse(`${isoDate}T00:00:00Z`), "UTC");

/** Who sees what, in one sentence. */
export function sharedPagesAnswer({ customers, last, recordFault }: SharedPagesResult): Sentence {
  if (recordFault !== null) return [recordFault];
  const sharing = customers.filter(({ shares }) => shares).length;
  if (last === null) {
    const ready = sharing === 0 ? "No customer has share = yes." : `${counted(sharing, "customer")} could have pages.`;
    return [strong("Nothing has been shared yet."), ` ${ready}`];
  }
  const seeing = customers.filter(({ shown }) => shown !== null);
  const batches = new Set(seeing.flatMap(({ shown }) => shown?.runs ?? [])).size;
  return [
    strong(`${counted(seeing.length, "customer")} can see ${counted(batches, "batch", "batches")}`),
    `, as shared on ${inFull(last.on)}.`,
  ];
}

/** What has come since, that no page shows yet; empty where there is nothing. */
export function sharedPagesGrounds({ customers, last }: SharedPagesResult): Sentence {
  if (last === null) return [];
  const held = new Set(last.inQuestion.filter(({ shared }) => !shared).map(({ run }) => run)).size;
  const behind = customers.filter(({ shares, shown }) => shares !== (shown !== null)).map(({ customer }) => customer);
  const said = [
    ...(held === 0 ? [] : [`${counted(held, "batch", "batches")} held back.`]),
    ...(behind.length === 0 ? [] : [`customers.csv says otherwise by now of ${behind.join(", ")}: share again.`]),
  ];
  return said.length === 0 ? [] : [said.join(" ")];
}
