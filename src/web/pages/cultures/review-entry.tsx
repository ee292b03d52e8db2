import type { ReactNode } from "react";
import type { NameOf } from "../../parts/people-names.tsx";
import { Said } from "../../parts/said.tsx";
import { useSession } from "../../parts/session.tsx";
import { findingText, signText } from "../../texts/culture-words.ts";
import { culturesText } from "../../texts/cultures.ts";
import { reviewsText } from "../../texts/reviews.ts";
import type { Cultures, Sign } from "./culture-rows.ts";
import { SignEntry, signDays } from "./sign-entry.tsx";

/** Signs one by one, but for those that one chart review does not document: they are one entry. */
export function signGroups(signs: readonly Sign[]): [Sign, ...Sign[]][] {
  const groups = new Map<string, [Sign, ...Sign[]]>();
  for (const sign of signs) {
    const { signId, day, lastDay, readAt, writtenAt, writtenBy, voidReason } = sign;
    const isReview = readAt !== null && voidReason === null;
    const key = JSON.stringify(isReview ? [day, lastDay, readAt, writtenAt, writtenBy] : [signId]);
    const known = groups.get(key);
    if (known) known.push(sign);
    else groups.set(key, [sign]);
  }
  return [...groups.values()];
}

/** One chart review: its days, its signs, who read the chart and when; each sign can be corrected by itself. */
export function ReviewEntry(props: {
  cultures: Cultures;
  group: readonly [Sign, ...Sign[]];
  nameOf: NameOf;
  again: () => void;
}): ReactNode {
  const { group, nameOf, ...rest } = props;
  const { time } = useSession();
  const [first] = group;
  return (
    <article>
      <h3 className="first-heading">{reviewsText("heading", { days: signDays(first) })}</h3>
      <p>
        <strong>{findingText("not-documented")}</strong>: {group.map(({ sign }) => signText(sign)).join(", ")}
      </p>
      <p className="small">
        {first.readAt !== null && <Said>{reviewsText("read", { when: time.short(first.readAt) })}</Said>},{" "}
        <Said>{culturesText("by", { when: time.short(first.writtenAt), name: nameOf(first.writtenBy) })}</Said>
      </p>
      <details open={group.some(({ signId }) => location.hash === `#sign-${signId}`)}>
        <summary>{reviewsText("each")}</summary>
        <ul className="plain-list">
          {group.map((sign) => (
            <li key={`${sign.signId} ${sign.version}`}>
              <SignEntry {...{ ...rest, sign, nameOf }} />
            </li>
          ))}
        </ul>
      </details>
    </article>
  );
}
