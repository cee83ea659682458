import {
  earlierEventsWords,
  eventEffect,
  eventSentence,
  noEventsSentence,
} from "../../findings/review/eventSentences.ts";
import { lookedAtSentence } from "../../findings/review/monthAnswer.ts";
import { logHealthSentence, openSentence } from "../../findings/review/openSentences.ts";
import type { ReviewReader } from "../../findings/review/reader.ts";
import type { MonthEvent, MonthReview } from "../../report/reviewResult.ts";
import { monthsOn } from "../../units/calendarMonth.ts";
import { printMonth } from "../../units/instant.ts";
import { useBody } from "../context.ts";
import { Entry } from "../Entry.tsx";
import { changesPage, logsPage } from "../pageNames.ts";
import { Said } from "../Said.tsx";

interface Props {
  readonly review: MonthReview;
  readonly reader: ReviewReader;
}

/** What was found last month, and what became of it. */
export function OpenQuestions({ review, reader }: Props) {
  if (review.open.length === 0) return null;
  return (
    <Entry id="open" title="Open last month" note={printMonth(monthsOn(review.totals.month, -1))}>
      <ul class="lines">
        {review.open.map((question) => (
          <li>
            <Said sentence={openSentence(question, reader)} />
          </li>
        ))}
      </ul>
    </Entry>
  );
}

function EventList({ events, reader }: { readonly events: readonly MonthEvent[]; readonly reader: ReviewReader }) {
  const { hrefTo } = useBody();
  return (
    <ul class="lines">
      {events.map((event) => (
        <li>
          <Said sentence={eventSentence(event)} /> <Said sentence={eventEffect(event, reader)} />{" "}
          {event.changeId === null ? null : (
            <a class="needs-screen" href={`${hrefTo(changesPage.path)}#${event.changeId}`}>
              What it changed
            </a>
          )}
        </li>
      ))}
    </ul>
  );
}

/** What was changed, repaired or calibrated, what went wrong, and what it came to by the month’s end. */
export function MonthEvents({ review, reader }: Props) {
  return (
    <Entry id="events" title="Changed and repaired">
      {review.events.length === 0 ? (
        <p>
          <Said sentence={noEventsSentence(review)} />
        </p>
      ) : (
        <EventList events={review.events} reader={reader} />
      )}
      {review.eventsBefore.length === 0 ? null : (
        <>
          <h3>{earlierEventsWords}</h3>
          <EventList events={review.eventsBefore} reader={reader} />
        </>
      )}
    </Entry>
  );
}

/** How complete the month's logs are, and what they were looked through for. */
export function RestsOn({ review }: Pick<Props, "review">) {
  const { hrefTo } = useBody();
  const health = logHealthSentence(review);
  if (health.length === 0) return null;
  return (
    <Entry id="logs" title="What this rests on" note={<a href={hrefTo(logsPage.path)}>Logs</a>}>
      <p>
        <Said sentence={health} />
      </p>
      {review.findings.length === 0 ? null : (
        <p class="quiet">
          <Said sentence={lookedAtSentence(review)} />
        </p>
      )}
    </Entry>
  );
}
