import type { SharedHouse } from "../sharedSite.ts";

/** Whom to ask, what the house adds, and what these figures are not. */
export function PageFoot({ house, sealed }: { readonly house: SharedHouse; readonly sealed: boolean }) {
  return (
    <footer class="foot">
      <div>
        {house.contact === null ? null : <p>{`Questions: ${house.contact}`}</p>}
        {house.note === null ? null : <p>{house.note}</p>}
        <p>
          <b>Statistics, not a food-safety release.</b> Figures are the malthouse’s own logs and the certificates they
          name. Colour is a number of the wort, not a promise of the beer’s.
        </p>
        <p>
          {sealed
            ? "Whoever has this page’s address and passphrase can read it: pass them on with care."
            : "Whoever has this page’s address can read it: pass it on with care."}
        </p>
      </div>
    </footer>
  );
}
