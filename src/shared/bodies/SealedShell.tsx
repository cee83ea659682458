import type { SharedHouse } from "../sharedSite.ts";

/** What a sealed page shows until it is opened: whose it is, and where the passphrase goes. */
export function SealedShell({ house }: { readonly house: SharedHouse }) {
  return (
    <>
      <header class="masthead">
        <p class="house">
          <span class="house-name">{house.name}</span>
        </p>
      </header>
      <main id="body">
        <header class="answer">
          <h1>This page is sealed.</h1>
          <p class="lede">The malthouse gave you its passphrase apart from the address: eight words.</p>
        </header>
        <form id="unseal" class="unseal" hidden>
          <label for="passphrase">Passphrase</label>
          <input id="passphrase" type="text" autocomplete="off" autocapitalize="none" spellcheck={false} />
          <label class="unseal-keep">
            <input id="keep" type="checkbox" /> Keep it for my other pages until this tab is closed
          </label>
          <button type="submit">Open</button>
        </form>
        <p id="unseal-said" role="status" />
        <noscript>
          <p>A sealed page is opened by a short script in it: please allow scripts for this page.</p>
        </noscript>
      </main>
    </>
  );
}
