import type { SharedHouse } from "../sharedSite.ts";

/** What whoever comes without a link finds: no list, no hint of one. */
export function NothingHere({ house }: { readonly house: SharedHouse }) {
  return (
    <>
      <header class="masthead">
        <p class="house">
          <span class="house-name">{house.name}</span>
        </p>
      </header>
      <main id="body">
        <header class="answer">
          <h1>There is nothing to see here.</h1>
          <p class="lede">
            If the malthouse gave you a link, use it as it is. If it leads here, it has been taken back: please ask.
          </p>
        </header>
      </main>
    </>
  );
}
