import type { ComponentChildren } from "preact";
import type { Stage } from "../Answer.tsx";
import { useBody } from "../context.ts";

/** A number of one stage: what it is, its value with unit, and how it was come by where that is not plain. */
export interface Fact {
  readonly name: string;
  readonly value: string;
  readonly basis?: string | null;
  /** Path from the site's root of the page about the value, where there is one. */
  readonly path?: string;
}

interface StageFactsProps {
  readonly stage: Stage;
  readonly title: string;
  readonly facts: readonly Fact[];
  readonly children?: ComponentChildren;
}

/** The numbers of one stage under the stage's own hue. */
export function StageFacts({ stage, title, facts, children }: StageFactsProps) {
  const { hrefTo } = useBody();
  return (
    <section class={`stage-${stage} keep-together`}>
      <h3>{title}</h3>
      {facts.length === 0 ? <p class="quiet">Not logged.</p> : null}
      <dl class="facts">
        {facts.map(({ name, value, basis, path }) => (
          <div>
            <dt>{name}</dt>
            <dd>{path === undefined ? value : <a href={hrefTo(path)}>{value}</a>}</dd>
            {basis ? <dd class="why">{basis}</dd> : null}
          </div>
        ))}
      </dl>
      {children}
    </section>
  );
}
