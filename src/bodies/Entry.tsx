import type { ComponentChildren } from "preact";
import { Later } from "./Later.tsx";

interface EntryProps {
  /** Unique on its page: the address of the entry. */
  readonly id: string;
  readonly title: string;
  /** A short note in the margin. */
  readonly note?: ComponentChildren;
  readonly children: ComponentChildren;
  readonly class?: string;
}

/** One entry of the ledger: what it is in the margin, the entry itself beside it. */
export function Entry({ id, title, note, children, class: extra }: EntryProps) {
  return (
    <section class={extra === undefined ? "entry" : `entry ${extra}`} id={id} aria-labelledby={`${id}-title`}>
      <Later place={`entry ${id}`}>
        <div class="entry-margin">
          <h2 id={`${id}-title`}>{title}</h2>
          {note === undefined ? null : <p>{note}</p>}
        </div>
        <div class="entry-body">{children}</div>
      </Later>
    </section>
  );
}
