import { useState } from "react";
import { setPolicy } from "../../../../shared/api/policies.ts";
import { dayTyped } from "../../parts/form/as-typed.ts";
import { useSession } from "../../parts/session.tsx";
import { useDraft } from "../../parts/use-draft.ts";
import { useRecording } from "../../parts/use-recording.ts";
import { policyDifferences } from "./policy-differences.ts";
import { bodyOf, draftOf, type PolicyDraft, sentencesOf } from "./policy-draft.ts";
import type { Policies } from "./policy-versions.tsx";

export interface EditorProps {
  readonly known: Policies;
  /** Whose policy: null is the facility's. */
  readonly wardId: number | null;
  /** A version was set. */
  readonly done: (number: number) => void;
  /** Begins anew with what is there by now. */
  readonly restart: () => void;
}

/** A new version as it is typed, kept on the device until it is set, with what it will print and how it is sent. */
export function usePolicyForm({ known, wardId, done, restart }: EditorProps) {
  const { me, time, now, wardCode } = useSession();
  const [began] = useState(() => firstDraft(known, wardId, time.dayOf(now())));
  const { draft, change, clear, wasKept } = useDraft(`policy-${wardId ?? "facility"}`, began, me.personId);
  const { sending, send } = useRecording(setPolicy);
  const { replaces, fromDay, reason, holds } = draft;
  const ward = wardId === null ? null : wardCode(wardId);
  const sentences = sentencesOf(draft, { number: replaces + 1, ward, fromDay });
  const record = async (seen: number): Promise<void> => {
    const body = holds === "own" ? bodyOf(draft) : null;
    const reply = await send({ wardId, fromDay: dayTyped(fromDay), body, replaces: seen, reason });
    if (reply.state !== "answered") return;
    clear();
    done(reply.value.number);
  };
  const again = (): void => {
    clear();
    restart();
  };
  const current = sending.state === "refused" ? sending.problem.document.current : undefined;
  const mine = { sentences: holds === "own" ? sentences : null, fromDay };
  const stale = current && {
    differences: policyDifferences(mine, current, ward),
    useMine: () => void record(Number(current.number ?? 0)),
    useTheirs: again,
  };
  return { draft, change, wasKept, sending, sentences, record, again, stale };
}

/** Begins with the latest rules of the ward or facility, else those of the level above. */
function firstDraft({ policies, builtIn }: Policies, wardId: number | null, fromDay: string): PolicyDraft {
  const latestOf = (whose: number | null) => policies.findLast((policy) => policy.wardId === whose);
  const body = latestOf(wardId)?.body ?? latestOf(null)?.body ?? builtIn.body;
  return draftOf(body, { replaces: latestOf(wardId)?.number ?? 0, fromDay });
}
