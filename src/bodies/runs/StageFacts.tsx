import type { ComponentChildren } from "preact";
import type { Stage } from "../Answer.tsx";

/** A number of one stage: what it is, its value with unit, and how it was come by where that is not plain. */
export interface Fact {
  readonly name: string;
  readonly value: string;
  readonly basis?: string | null;
}

interface StageFactsProps {
  readonly stage: Stage;
  readonly title: string;
  readonly facts: readonly Fact[];
  readonly children?: ComponentChildren;
}

/** The numbers of one stage under the stage's own hue. */
export function StageFacts({ stage, title, facts, children }: StageFactsProps) {
  return (
    <section class={`stage-${stage} keep-together`}>
      <h3>{title}</h3>
      {facts.length === 0 ? <p class="quiet">Not logged.</p> : null}
      <dl class="facts">
        {facts.map(({ name, value, basis }) => (
          <div>
            <dt>{name}</dt>
            <dd>{value}</dd>
            {basis ? <dd class="why">{basis}</dd> : null}
          </div>
        ))}
      </dl>
      {children}
    </section>
  );
}
