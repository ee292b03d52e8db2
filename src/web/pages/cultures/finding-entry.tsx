import type { ReactNode } from "react";
import { findingKinds } from "../../../../shared/case-words.ts";
import { Corrections } from "../../parts/corrections.tsx";
import type { NameOf } from "../../parts/people-names.tsx";
import { Said } from "../../parts/said.tsx";
import { useSession } from "../../parts/session.tsx";
import { dayWords } from "../../parts/words.ts";
import { culturesText } from "../../texts/cultures.ts";
import { findingsText as text } from "../../texts/findings.ts";
import { type Cultures, correctionsOf, type Finding, wordsBefore } from "./culture-rows.ts";
import { FindingActs } from "./finding-acts.tsx";

/** One finding of a day: what it was, by whom, and what it said before. */
export function FindingEntry(props: {
  cultures: Cultures;
  finding: Finding;
  nameOf: NameOf;
  again: () => void;
}): ReactNode {
  const { cultures, finding, nameOf, again } = props;
  const { may, time } = useSession();
  const { findingId, day, at, present, cellsPerMm3, voidReason, writtenAt, writtenBy } = finding;
  return (
    <article id={`finding-${findingId}`} tabIndex={-1}>
      <h3 className="first-heading">
        <Said>{culturesText("ofDay", { sign: findingKinds[finding.finding], day: dayWords(day) })}</Said>
      </h3>
      <p>
        <strong>{text(present ? "isSo" : "isNotSo")}</strong>
        {cellsPerMm3 !== null && <>, {text("cellsSaid", { cells: cellsPerMm3 })}</>},{" "}
        {at === null ? culturesText("hourUnknown") : culturesText("at", { time: time.clock(at) })}
      </p>
      <p className="small">
        <Said>{culturesText("by", { when: time.short(writtenAt), name: nameOf(writtenBy) })}</Said>
      </p>
      {voidReason !== null && (
        <p className="notice">
          <Said>{culturesText("voided", { reason: voidReason })}</Said>
        </p>
      )}
      <Corrections corrections={correctionsOf(cultures, `finding ${findingId}`)} nameOf={nameOf} words={wordsBefore} />
      {voidReason === null && may("record-care") && <FindingActs {...{ finding, again }} />}
    </article>
  );
}
