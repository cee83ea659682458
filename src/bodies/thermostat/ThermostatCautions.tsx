/** What can hurt at a kiln's thermostat, and in checking it. Sources stand beside each; common practice is called that. */
export function ThermostatCautions() {
  return (
    <footer class="cautions">
      <p class="caution">
        Opening a thermostat, a heater or a switchboard is a licensed electrician’s work, with the supply locked off
        first (29&nbsp;CFR&nbsp;1910.147, from memory). Local codes go before anything said here.
      </p>
      <p class="caution">
        A kiln can overheat and burn: rootlets and dust under the floor near elements take fire. An over-temperature
        cut-out that does not depend on the thermostat must stay armed, and a thermostat that reads low heats on. Do not
        leave the kiln unattended (common practice).
      </p>
      <p class="caution">
        Boiling water and its steam burn at once. Check a probe with gloves on, the pot steady, a lid with a hole for
        the probe, and nobody’s face over it (common practice).
      </p>
    </footer>
  );
}
