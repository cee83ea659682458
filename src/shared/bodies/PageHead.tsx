import type { ComponentChildren } from "preact";
import type { SharedHouse } from "../sharedSite.ts";

interface PageHeadProps {
  readonly house: SharedHouse;
  /** Links to the pages above and beside this one. */
  readonly children?: ComponentChildren;
}

/** The house's name over a customer's page. */
export function PageHead({ house, children }: PageHeadProps) {
  return (
    <header class="masthead">
      <p class="house">
        <span class="house-name">{house.name}</span>
        {house.invented ? <span>an invented house</span> : null}
        {children}
      </p>
    </header>
  );
}
