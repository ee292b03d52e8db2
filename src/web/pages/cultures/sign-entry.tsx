import type { ReactNode } from "react";
import { Corrections } from "../../parts/corrections.tsx";
import type { NameOf } from "../../parts/people-names.tsx";
import { Said } from "../../parts/said.tsx";
import { useSession } from "../../parts/session.tsx";
import { dayWords } from "../../parts/words.ts";
import { findingText, signText } from "../../texts/culture-words.ts";
import { culturesText } from "../../texts/cultures.ts";
import { reviewsText } from "../../texts/reviews.ts";
import { type Cultures, correctionsOf, type Sign, wordsBefore } from "./culture-rows.ts";
import { SignActs } from "./sign-acts.tsx";

/** The day of a sign, or the days of a chart review. */
export function signDays({ day, lastDay }: Sign): string {
  if (lastDay === null || lastDay === day) return dayWords(day);
  return reviewsText("range", { first: dayWords(day), last: dayWords(lastDay) });
}

/** One sign of a day: what was found, by whom, and what it said before. */
export function SignEntry(props: { cultures: Cultures; sign: Sign; nameOf: NameOf; again: () => void }): ReactNode {
  const { cultures, sign, nameOf, again } = props;
  const { may, time } = useSession();
  const { signId, at, finding, temperature, otherCause, readAt, voidReason, writtenAt, writtenBy } = sign;
  return (
    <article id={`sign-${signId}`} tabIndex={-1}>
      <h3 className="first-heading">{culturesText("ofDay", { sign: signText(sign.sign), day: signDays(sign) })}</h3>
      <p>
        <strong>{temperature === null ? findingText(finding) : <Said>{temperature}</Said>}</strong>,{" "}
        {readAt !== null && <Said>{reviewsText("read", { when: time.short(readAt) })}</Said>}
        {readAt === null && (at === null ? culturesText("hourUnknown") : culturesText("at", { time: time.clock(at) }))}
        {otherCause && <>, {culturesText("otherKnown")}</>}
      </p>
      <p className="small">
        <Said>{culturesText("by", { when: time.short(writtenAt), name: nameOf(writtenBy) })}</Said>
      </p>
      {voidReason !== null && (
        <p className="notice">
          <Said>{culturesText("voided", { reason: voidReason })}</Said>
        </p>
      )}
      <Corrections corrections={correctionsOf(cultures, `sign ${signId}`)} nameOf={nameOf} words={wordsBefore} />
      {voidReason === null && may("record-care") && <SignActs {...{ sign, again }} />}
    </article>
  );
}
