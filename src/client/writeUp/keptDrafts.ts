import { type Draft, formatDrafts, parseDrafts, stagesTyped } from "../../tables/writeUp/draft.ts";

/** Drafts that survive a reload: what this browser keeps for this site, one for each batch. */
export interface KeptDrafts {
  all(): readonly Draft[];
  /** Keeps a draft in place of the one of its batch; one without a typed box is dropped. @returns whether it could be kept */
  put(draft: Draft): boolean;
}

/** @param root address of the site, so that two houses on one host do not mix */
export function openKeptDrafts(root: string): KeptDrafts {
  const key = `write-up ${new URL(root).pathname}`;
  const all = (): readonly Draft[] => {
    try {
      return parseDrafts(localStorage.getItem(key));
    } catch {
      return [];
    }
  };
  return {
    all,
    put(draft) {
      const others = all().filter(({ run }) => run !== draft.run);
      const drafts = stagesTyped(draft).length > 0 ? [draft, ...others] : others;
      try {
        if (drafts.length === 0) localStorage.removeItem(key);
        else localStorage.setItem(key, formatDrafts(drafts));
        return true;
      } catch {
        return false;
      }
    },
  };
}
