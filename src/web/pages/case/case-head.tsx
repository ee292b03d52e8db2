import type { ReactNode } from "react";
import { Said } from "../../parts/said.tsx";
import { useSession } from "../../parts/session.tsx";
import { Term } from "../../parts/term.tsx";
import { dayWords, longDayWords } from "../../parts/words.ts";
import { caseText } from "../../texts/case.ts";
import { caseStateText } from "../../texts/culture-words.ts";
import { patientText } from "../../texts/patient.ts";
import type { Case } from "./case-rows.ts";

/** Whose culture it is, from when and where, and where the work on it stands. */
export function CaseHead({ detail }: { detail: Case }): ReactNode {
  const { wardCode } = useSession();
  const { identifier, wardId, subject, ageDays, state } = detail;
  const event = detail.determination?.event ?? null;
  return (
    <dl className="card who-card">
      <div>
        <dt>{patientText("patient")}</dt>
        <dd>
          <strong>
            <Said>{identifier}</Said>
          </strong>
        </dd>
      </div>
      <div>
        <dt>{caseText("ward")}</dt>
        <dd>{wardId === null ? caseText("noWard") : <Said>{wardCode(wardId)}</Said>}</dd>
      </div>
      <div>
        <dt>{caseText("collected")}</dt>
        <dd>
          {dayWords(subject.day)}, {caseText("ago", { count: ageDays })}
        </dd>
      </div>
      <div>
        <dt>{caseText("age", { day: dayWords(event?.dateOfEvent ?? subject.day) })}</dt>
        <dd>{ageWords(detail.ageMonths)}</dd>
      </div>
      {event && (
        <>
          <div>
            <dt>{caseText("catheterDay")}</dt>
            <dd>
              {event.catheterDay === null
                ? caseText("noCatheterDay")
                : caseText("catheterDayOf", { number: event.catheterDay })}
            </dd>
          </div>
          <div>
            <dt>{caseText("hospitalDay")}</dt>
            <dd>{caseText("hospitalDayOf", { number: event.hospitalDay })}</dd>
          </div>
        </>
      )}
      <div>
        <dt>{caseText("work")}</dt>
        <dd>{caseStateText(state)}</dd>
      </div>
    </dl>
  );
}

/** Under two years in months, because definitions for infants turn on them. */
function ageWords(months: number | null): string {
  if (months === null) return caseText("ageUnknown");
  return months < 24 ? caseText("months", { count: months }) : caseText("years", { count: Math.floor(months / 12) });
}

/** What the event is, where there is one: the day and the ward to which it belongs, and what grew. */
export function EventFacts({ event }: { event: NonNullable<NonNullable<Case["determination"]>["event"]> }): ReactNode {
  const { wardCode } = useSession();
  const { dateOfEvent, hospitalDay, window, repeatTimeframe, bloodstreamPeriod, wardId, isCauti, pathogens } = event;
  const range = ({ first, last }: { first: string; last: string }): string =>
    `${dayWords(first as typeof dateOfEvent)} – ${dayWords(last as typeof dateOfEvent)}`;
  return (
    <dl className="facts">
      <dt>
        <Term name="date-of-event" />
      </dt>
      <dd>{caseText("eventDay", { day: longDayWords(dateOfEvent), number: hospitalDay })}</dd>
      <dt>
        <Term name="location-of-attribution" />
      </dt>
      <dd>
        {wardId === null ? caseText("noWard") : <Said>{wardCode(wardId)}</Said>}
        {", "}
        {caseText(isCauti ? "cauti" : "notCauti")}
      </dd>
      <dt>
        <Term name="infection-window" />
      </dt>
      <dd>{range(window)}</dd>
      <dt>
        <Term name="repeat-timeframe" />
      </dt>
      <dd>{range(repeatTimeframe)}</dd>
      {bloodstreamPeriod && (
        <>
          <dt>
            <Term name="bloodstream-period" />
          </dt>
          <dd>{range(bloodstreamPeriod)}</dd>
        </>
      )}
      <dt>{caseText("pathogens")}</dt>
      <dd>
        <Said>{[...pathogens, ...event.addedPathogens].join(", ")}</Said>
      </dd>
      <Blood event={event} />
    </dl>
  );
}

function Blood({
  event,
}: {
  event: { secondaryBloodstream: readonly number[]; bloodstreamWaiting: readonly number[] };
}) {
  const { secondaryBloodstream, bloodstreamWaiting } = event;
  if (secondaryBloodstream.length + bloodstreamWaiting.length === 0) return null;
  return (
    <>
      <dt>{caseText("blood")}</dt>
      <dd>
        {secondaryBloodstream.length > 0 && caseText("secondary", { count: secondaryBloodstream.length })}{" "}
        {bloodstreamWaiting.length > 0 && caseText("bloodWaiting", { count: bloodstreamWaiting.length })}
      </dd>
    </>
  );
}
