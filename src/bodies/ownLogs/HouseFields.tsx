/** What a house's settings would say, asked for logs that come without a house.toml. */
export function HouseFields({ timeZone }: { readonly timeZone: string | null }) {
  return (
    <fieldset class="house-fields">
      <legend>For logs without a house.toml, which would say this and more</legend>
      <div class="choose-fields">
        <div class="field">
          <label for="own-name">The house</label>
          <input id="own-name" type="text" name="name" autoComplete="organization" placeholder="My malthouse" />
        </div>
        <div class="field">
          <label for="own-zone">Time zone of the logs</label>
          <input
            id="own-zone"
            type="text"
            name="zone"
            autoComplete="off"
            spellcheck={false}
            defaultValue={timeZone ?? ""}
            placeholder="Europe/Berlin"
          />
        </div>
        <div class="field">
          <label for="own-units">Show</label>
          <select id="own-units" name="units">
            <option value="metric">metric units</option>
            <option value="us">US customary units</option>
          </select>
        </div>
        <div class="field">
          <label for="own-dates">Dates are written</label>
          <select id="own-dates" name="dates">
            <option value="ymd">2026-03-31</option>
            <option value="dmy">31.3.2026 or 31/3/2026</option>
            <option value="mdy">3/31/2026</option>
          </select>
        </div>
      </div>
    </fieldset>
  );
}
