import { useMemo } from "preact/hooks";
import { thermostatAnswer, thermostatGrounds } from "../findings/thermostatAnswer.ts";
import type { LoadRow } from "../report/loadRow.ts";
import type { ReportWith } from "../report/report.ts";
import type { KilnCurve } from "../report/runPageResult.ts";
import { Answer } from "./Answer.tsx";
import { useFigureSettings } from "./context.ts";
import { FilterBar } from "./FilterBar.tsx";
import { thermostatPage } from "./pageNames.ts";
import { CloseUp } from "./thermostat/CloseUp.tsx";
import { EffectsOnMalt } from "./thermostat/EffectsOnMalt.tsx";
import { FanEntry } from "./thermostat/FanEntry.tsx";
import { HoldEntry } from "./thermostat/HoldEntry.tsx";
import { KilnCard } from "./thermostat/KilnCard.tsx";
import { KindOfChange } from "./thermostat/KindOfChange.tsx";
import { kilnPlaces } from "./thermostat/kilnPlace.ts";
import { loadsWithReadings } from "./thermostat/shownLoad.ts";
import { ThermostatCautions } from "./thermostat/ThermostatCautions.tsx";
import { ThermostatLoads } from "./thermostat/ThermostatLoads.tsx";
import { ThermostatOrLogger } from "./thermostat/ThermostatOrLogger.tsx";
import { ThermostatWorkedOut } from "./thermostat/ThermostatWorkedOut.tsx";
import { closeUpFigures, thermostatFigures } from "./thermostat/thermostatFigures.ts";
import { useReader } from "./thermostat/useReader.ts";

export interface ThermostatProps {
  readonly report: ReportWith<"thermostat">;
  /** The load shown close up, as `shownLoad` finds it. */
  readonly load: LoadRow | null;
  /** Its readings; null where they are not at hand. */
  readonly curve: KilnCurve | null;
}

/** Is the thermostat drifting, how fast, and when will it matter? Or is it the logger that is off? */
export function Thermostat({ report, load, curve }: ThermostatProps) {
  const { thermostat } = report;
  const settings = useFigureSettings();
  const reader = useReader();
  const places = kilnPlaces(thermostat.kilns);
  const figures = useMemo(
    () => kilnPlaces(thermostat.kilns).map(({ kiln, suffix }) => thermostatFigures(kiln, settings, suffix)),
    [thermostat, settings],
  );
  const rows = useMemo(() => new Map(report.loads.map((row) => [row.load, row])), [report.loads]);
  const read = new Map(thermostat.kilns.flatMap((kiln) => kiln.loads.map((one) => [one.load, one] as const)));
  const ofLoad = load === null ? undefined : read.get(load.load);
  const atBulb = thermostat.kilns.some(({ kiln, probeAtBulb }) => kiln === load?.kiln && probeAtBulb);
  const closeUp = useMemo(
    () => closeUpFigures(curve, load, ofLoad, settings, atBulb),
    [curve, load, ofLoad, settings, atBulb],
  );
  return (
    <>
      <Answer
        page={thermostatPage.title}
        stage="kiln"
        answer={thermostatAnswer(thermostat, reader)}
        grounds={thermostatGrounds(thermostat, reader)}
      />
      <FilterBar report={report} page={thermostatPage.path} />
      {places.map((place, i) => {
        const drawn = figures[i];
        const tableId = `every-load${place.suffix}`;
        if (drawn === undefined) return null;
        return (
          <>
            <HoldEntry {...place} hold="drying" figures={drawn.drying} numbersIn={`#${tableId}`} />
            <HoldEntry {...place} hold="cure" figures={drawn.cure} numbersIn={`#${tableId}`} />
            <KindOfChange {...place} />
            <ThermostatOrLogger {...place} figure={drawn.checks} />
            {load !== null && load.kiln === place.kiln.kiln ? (
              <CloseUp
                loads={loadsWithReadings(report)}
                shown={load}
                read={ofLoad ?? null}
                figures={closeUp}
                hasReadings={curve !== null}
              />
            ) : null}
            <FanEntry {...place} figure={drawn.fan} />
            <EffectsOnMalt {...place} />
            <KilnCard {...place} lastLoggedAt={report.lastLoggedAt} />
          </>
        );
      })}
      {thermostat.kilns.length === 0 ? null : <ThermostatWorkedOut kilns={thermostat.kilns} />}
      {places.map((place) => (
        <ThermostatLoads {...place} rows={rows} tableId={`every-load${place.suffix}`} />
      ))}
      <ThermostatCautions />
    </>
  );
}
