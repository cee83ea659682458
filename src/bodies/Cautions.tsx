/** What can hurt at the kiln. Sources stand beside each; common practice is called that. */
export function KilnCautions() {
  return (
    <footer class="cautions">
      <p class="caution">
        A kiln can overheat and burn: rootlets and dust under the floor near elements take fire, and a cut-out that does
        not depend on the thermostat must stay armed. Do not leave it unattended (common practice).
      </p>
      <p class="caution">
        Fired directly, a kiln brings carbon monoxide into the room and nitrosamines into the malt: at most 10&nbsp;ppb
        of NDMA in malt in the United States (FDA CPG&nbsp;578.500), 50&nbsp;ppm of carbon monoxide at work (OSHA, from
        memory). Keep an alarm where people stand.
      </p>
      <p class="caution">
        Wiring, thermostats and heaters are for licensed people, with the supply locked off (29&nbsp;CFR&nbsp;1910.147,
        from memory). Local codes go before anything said here.
      </p>
    </footer>
  );
}

/** What can hurt at tanks and on the germination floor. */
export function SteepCautions() {
  return (
    <footer class="cautions">
      <p class="caution">
        Steeping and germinating grain gives off carbon dioxide (CMBTC malting guide). At work the limit is
        5000&nbsp;ppm over a shift (OSHA, from memory), and 40&nbsp;000&nbsp;ppm endangers life at once (NIOSH, from
        memory). Air tanks, pits and low rooms before going in, and never go in alone. Local codes say what a confined
        space asks for.
      </p>
    </footer>
  );
}

/** What can hurt on the floor, and what no count of kernels can find. */
export function FloorCautions() {
  return (
    <footer class="cautions">
      <p class="caution">
        Steeping and germinating grain gives off carbon dioxide (CMBTC malting guide); it is heavier than air and lies
        over beds, in drained tanks and in low rooms. At work the limit is 5000&nbsp;ppm over a shift (OSHA, from
        memory), and 40&nbsp;000&nbsp;ppm endangers life at once (NIOSH, from memory). Air the room and measure before
        bending over a closed bed.
      </p>
      <p class="caution">
        A tank or pit may be a confined space, to be entered by permit only, with air measured and somebody outside
        (29&nbsp;CFR&nbsp;1910.146). Of those who died in such spaces 60 in 100 had gone in to rescue another (the same,
        training slides): call for help, do not follow. Local codes go before anything said here.
      </p>
      <p class="caution">
        Moulds on grain and in a warm bed can leave toxins that neither eye nor count finds: they need a laboratory. The
        European Union allows 1000&nbsp;µg/kg of deoxynivalenol in unprocessed grain and 200 of T-2 and HT-2 together in
        malting barley (Regulation 2023/915 as amended by 2024/1022, read in the news); the United States advise
        1&nbsp;ppm in finished wheat products (FDA, 2010). These pages are statistics, not a food-safety release.
      </p>
    </footer>
  );
}
