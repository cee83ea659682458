import type { ComponentChildren } from "preact";

interface EntryProps {
  /** Unique on its page. */
  readonly id: string;
  readonly title: string;
  readonly note?: string;
  readonly children: ComponentChildren;
}

/** One entry of a page that is built once: what it is in the margin, the entry itself beside it. */
export function Entry({ id, title, note, children }: EntryProps) {
  return (
    <section class="entry" id={id} aria-labelledby={`${id}-title`}>
      <div class="entry-margin">
        <h2 id={`${id}-title`}>{title}</h2>
        {note === undefined ? null : <p>{note}</p>}
      </div>
      <div class="entry-body">{children}</div>
    </section>
  );
}
