import { type WriteUpTable, writeUpTables } from "./writeUpStages.ts";

/** What has been typed of one stage, by heading. Blank boxes are not in it. */
export type StageDraft = Readonly<Record<string, string>>;

/** What has been typed of one batch and is not in the logs yet. */
export interface Draft {
  readonly run: string;
  readonly stages: Readonly<Partial<Record<WriteUpTable, StageDraft>>>;
}

export const emptyDraft = (run: string): Draft => ({ run, stages: {} });

/** The stages that hold anything, in the order of the work. */
export const stagesTyped = ({ stages }: Draft): readonly WriteUpTable[] =>
  writeUpTables.filter((table) => Object.keys(stages[table] ?? {}).length > 0);

/** A draft after one box was typed in. */
export function withTyped(draft: Draft, table: WriteUpTable, heading: string, text: string): Draft {
  const { [heading]: _, ...others } = draft.stages[table] ?? {};
  const stage: StageDraft = text.trim() === "" ? others : { ...others, [heading]: text };
  return { ...draft, stages: { ...draft.stages, [table]: stage } };
}

/** A draft after one of its stages went into the logs. */
export function withoutStage(draft: Draft, table: WriteUpTable): Draft {
  const { [table]: _, ...stages } = draft.stages;
  return { ...draft, stages };
}

const isStage = (value: unknown): value is StageDraft =>
  typeof value === "object" && value !== null && Object.values(value).every((text) => typeof text === "string");

/** Drafts as they were kept. What is not a draft is left out, since anything may have been kept by an older version. */
export function parseDrafts(text: string | null): readonly Draft[] {
  let kept: unknown = null;
  try {
    kept = JSON.parse(text ?? "[]");
  } catch {
    return [];
  }
  if (!Array.isArray(kept)) return [];
  return kept.flatMap((one: unknown): Draft[] => {
    if (typeof one !== "object" || one === null || !("run" in one) || typeof one.run !== "string") return [];
    const given = ("stages" in one && typeof one.stages === "object" ? one.stages : {}) as Record<string, unknown>;
    const stages = writeUpTables.flatMap((table) => (isStage(given[table]) ? [[table, given[table]] as const] : []));
    return [{ run: one.run, stages: Object.fromEntries(stages) }];
  });
}

export const formatDrafts = (drafts: readonly Draft[]): string => JSON.stringify(drafts);
