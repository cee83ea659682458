import type { Note } from "./pageNotes.ts";

/** When something was fetched: as resource timing gives it, with milliseconds since 1970. */
export interface Fetched {
  readonly address: string;
  readonly startedAt: number;
  readonly endedAt: number;
  readonly bytes: number;
}

/** The steps from the choice to the new page, in their order. */
export const STAGES = [
  "the live script and its worker come",
  "tables fetched",
  "engine fetched",
  "engine unpacked and kept",
  "engine started and locked",
  "tables read in",
  "tables joined",
  "report made",
  "drawn and shown in the window",
  "the rest of the page",
] as const;

export type StageTimes = Readonly<Record<(typeof STAGES)[number], number>>;

/**
 * What the notes of one first choice come to: milliseconds a stage, which add up to the whole.
 *
 * @param notes of the page and of the report worker together
 * @param fetched what the report worker fetched
 * @throws {Error} when a moment is missing or out of its order, as after a change of the live site that this does not know
 */
export function stageTimes(notes: readonly Note[], fetched: readonly Fetched[], control: string): StageTimes {
  const first = (what: string): number | undefined => notes.find((note) => note.what === what)?.at;
  const last = (what: string): number | undefined => notes.findLast((note) => note.what === what)?.at;
  const report = notes.findIndex(({ what }) => what === "worker says report");
  const answered = notes.find(({ what }, i) => i > report && what === "frame shown");
  const fetches = (part: string): readonly Fetched[] => fetched.filter(({ address }) => address.includes(part));
  const moments: readonly (readonly [string, number | undefined])[] = [
    ["choice", first(`used ${control}`)],
    ["first table asked for", fetches("/tables/")[0]?.startedAt],
    ["last table there", Math.max(...fetches("/tables/").map(({ endedAt }) => endedAt))],
    ["engine there", fetches("/engine/").find(({ address }) => address.endsWith(".bin"))?.endedAt],
    ["engine worker made", first("engine worker made")],
    ["first table given", first("asked REGISTER_FILE_BUFFER")],
    ["last table taken in", last("answered DROP_FILE")],
    ["ready", first("worker says ready")],
    ["report", first("worker says report")],
    ["frame with the answer shown", answered?.at],
    ["last frame shown", last("frame shown")],
  ];
  const at = moments.map(([name, moment], i) => {
    if (moment === undefined || !Number.isFinite(moment)) throw new Error(`the redraw left no note of: ${name}`);
    const before = moments[i - 1];
    // Two processes' clocks are compared to a tenth of a millisecond.
    if (before?.[1] !== undefined && moment < before[1] - 1)
      throw new Error(`${name} was noted before ${before[0]}: the stages are no longer what this reads`);
    return moment;
  });
  const entries = STAGES.map((stage, i) => [stage, (at[i + 1] as number) - (at[i] as number)]);
  return Object.fromEntries(entries) as StageTimes;
}
