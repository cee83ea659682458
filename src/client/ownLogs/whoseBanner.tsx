import { render } from "preact";
import { WhoseLogs } from "../../bodies/ownLogs/WhoseLogs.tsx";
import { yourLogsPage } from "../../bodies/pageNames.ts";
import type { ReportRows } from "../../report/report.ts";
import { printDateInFull } from "../../units/instant.ts";
import type { SitePlaces } from "../sitePlaces.ts";

/** What stands on a page outside its body and names the house: the head of the page, and the banner while logs are the reader's own. */
export interface WhoseBanner {
  /**
   * @param own the reader's own logs and whether they are kept; null while the site's are shown
   * @param progress of reading; null while none is under way
   */
  show(own: { readonly rows: ReportRows; readonly kept: boolean } | null, progress: string | null): void;
}

const slot = (name: string): HTMLElement | null => document.querySelector(`.house [data-slot="${name}"]`);

export function openBanner(places: SitePlaces): WhoseBanner {
  const banner = document.getElementById("whose");
  const name = document.querySelector<HTMLElement>(".house-name");
  const built = { name: name?.textContent ?? "", logsTo: slot("logs-to")?.textContent ?? "" };
  return {
    show(own, progress) {
      const rows = own?.rows ?? null;
      if (name) name.textContent = rows?.house.name ?? built.name;
      const invented = slot("invented");
      if (invented) invented.hidden = rows !== null;
      const logsTo = slot("logs-to");
      if (logsTo) {
        const last = rows?.lastLoggedAt ?? null;
        const ownTo = last === null ? "" : `run logs to ${printDateInFull(last, rows?.house.timeZone ?? "UTC")}`;
        logsTo.textContent = rows === null ? built.logsTo : ownTo;
      }
      if (!banner) return;
      banner.hidden = rows === null && progress === null;
      render(
        <WhoseLogs
          house={rows?.house.name ?? null}
          kept={own?.kept === true}
          progress={progress ?? ""}
          yourLogsHref={`${new URL(places.root).pathname}${yourLogsPage.path}`}
        />,
        banner,
      );
    },
  };
}
