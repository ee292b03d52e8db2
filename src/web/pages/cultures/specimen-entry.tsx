import type { ReactNode } from "react";
import { Corrections } from "../../parts/corrections.tsx";
import { PageLink } from "../../parts/page-link.tsx";
import type { NameOf } from "../../parts/people-names.tsx";
import { Said } from "../../parts/said.tsx";
import { useSession } from "../../parts/session.tsx";
import { organismGroupText, specimenMethodText, specimenStatusText } from "../../texts/culture-words.ts";
import { culturesText } from "../../texts/cultures.ts";
import { type Cultures, correctionsOf, type Specimen, specimenHeading, wordsBefore } from "./culture-rows.ts";
import { SpecimenActs } from "./specimen-acts.tsx";

interface EntryProps {
  readonly cultures: Cultures;
  readonly specimen: Specimen;
  readonly nameOf: NameOf;
  readonly again: () => void;
}

/** One specimen: what grew and how it is read, who wrote it down, and what it said before. */
export function SpecimenEntry({ cultures, specimen, nameOf, again }: EntryProps): ReactNode {
  const { may, time } = useSession();
  const { specimenId, kind, status, method, number, voidReason, writtenAt, writtenBy } = specimen;
  return (
    <article id={`specimen-${specimenId}`} tabIndex={-1}>
      <h3 className="first-heading">{specimenHeading(specimen, time)}</h3>
      <p>
        <strong>{specimenStatusText(status)}</strong>
        {method !== "culture" && <>, {specimenMethodText(method)}</>}
        {number !== null && (
          <>
            , <Said>{culturesText("laboratory", { number })}</Said>
          </>
        )}
      </p>
      <Grew specimen={specimen} />
      <p className="small">
        <Said>{culturesText("by", { when: time.short(writtenAt), name: nameOf(writtenBy) })}</Said>
      </p>
      {voidReason !== null && (
        <p className="notice">
          <Said>{culturesText("voided", { reason: voidReason })}</Said>
        </p>
      )}
      <Corrections
        corrections={correctionsOf(cultures, `specimen ${specimenId}`)}
        nameOf={nameOf}
        words={wordsBefore}
      />
      {kind === "urine" && may("judge-cases") && (
        <PageLink to={`/cases/${specimenId}`} className="button on-screen">
          {culturesText("toCase")}
        </PageLink>
      )}
      {voidReason === null && may("record-care") && <SpecimenActs {...{ specimen, again }} />}
    </article>
  );
}

function Grew({ specimen: { organisms, status } }: { specimen: Specimen }): ReactNode {
  if (organisms.length === 0) {
    const isReported = status === "final" || status === "corrected";
    return <p>{culturesText(isReported ? "noGrowth" : "noReport")}</p>;
  }
  return (
    <ul>
      {organisms.map(({ organismId, name, group, count, countKind, isCommensal }) => (
        <li key={organismId}>
          <strong>
            <Said>{name}</Said>
          </strong>
          {group !== "no-growth" && ", "}
          {group === "no-growth" ? null : count === null ? culturesText("countMissing") : <Said>{count}</Said>}
          {countKind === "unreadable" && <em className="note">{culturesText("countUnreadable")}</em>}
          {group === null ? (
            <em className="note">{culturesText("groupMissing")}</em>
          ) : (
            <span className="small">
              {" "}
              ({organismGroupText(group)}
              {isCommensal && <>, {culturesText("commensal")}</>})
            </span>
          )}
        </li>
      ))}
    </ul>
  );
}
