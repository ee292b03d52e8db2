import { type ReactNode, useId, useState } from "react";
import { confirmCatheter, reviewCatheter } from "../../../../shared/api/notes.ts";
import type { PolicyBody } from "../../../../shared/policy.ts";
import { PageLink } from "../../parts/page-link.tsx";
import { Said } from "../../parts/said.tsx";
import { useSession } from "../../parts/session.tsx";
import { StateBadge } from "../../parts/state-badge.tsx";
import { indicationLabel } from "../../texts/indications.ts";
import { roundText } from "../../texts/round.ts";
import { OtherAnswer, type ReviewAnswer } from "./other-answer.tsx";
import { QuickNoteWords } from "./quick-note-words.tsx";
import type { RoundRow } from "./round-rows.ts";
import { RowFacts } from "./row-facts.tsx";
import { useQuickNote } from "./use-quick-note.ts";

interface CardProps {
  readonly row: RoundRow;
  readonly policy: PolicyBody;
  readonly isPast: boolean;
  readonly onRecorded: () => void;
}

/** One catheter of a round: whose it is, what its state is, and what can be recorded with one touch. */
export function RoundCard({ row, policy, isPast, onRecorded }: CardProps): ReactNode {
  const id = useId();
  return (
    <article className="card round-card" aria-labelledby={id}>
      <div className="round-who" id={id}>
        <span className="bed">{row.bed === null ? roundText("noBed") : roundText("bed", { bed: row.bed })}</span>{" "}
        <Said>{row.identifier}</Said>
      </div>
      {row.states.length > 0 && (
        <p className="row round-states">
          {row.states.map(({ state }) => (
            <StateBadge key={state} state={state} />
          ))}
        </p>
      )}
      <RowFacts row={row} policy={policy} />
      {!isPast && <Answers {...{ row, policy, onRecorded }} labelledBy={id} />}
      <Reasons row={row} />
    </article>
  );
}

function Answers(props: Omit<CardProps, "isPast"> & { labelledBy: string }): ReactNode {
  const { row, policy, onRecorded, labelledBy } = props;
  const { now } = useSession();
  const [isOpen, setOpen] = useState(false);
  const panelId = useId();
  const note = useQuickNote(onRecorded);
  const accepted = policy.indications.find(({ code }) => code === row.indication);
  const address = `/patients/${row.patientId}/catheters/${row.catheterId}`;
  const at = (): string => new Date(now()).toISOString();
  const review = (answer: ReviewAnswer): void => {
    setOpen(false);
    note.record(reviewCatheter, { catheterId: row.catheterId, at: at(), ...answer }, wordsOf(answer, policy));
  };
  const keep = (): void => (accepted ? review({ outcome: "keep", indication: accepted.code }) : setOpen(true));
  const seen = (): void =>
    note.record(confirmCatheter, { catheterId: row.catheterId, at: at() }, roundText("recordedSeen"));
  return (
    <>
      <fieldset className="row plain round-answers" aria-labelledby={labelledBy}>
        <button type="button" className="first" onClick={keep}>
          {accepted ? roundText("keep", { indication: accepted.label }) : roundText("keepChoose")}
        </button>
        <button type="button" aria-expanded={isOpen} aria-controls={panelId} onClick={() => setOpen(!isOpen)}>
          {isOpen ? roundText("closeAnswer") : roundText("otherAnswer")}
        </button>
        <button type="button" onClick={seen}>
          {roundText("seenNow")}
        </button>
        <PageLink to={`${address}/care`} className="button">
          {roundText("care")}
        </PageLink>
        <PageLink to={`${address}/removal`} className="button">
          {roundText("removed")}
        </PageLink>
        <PageLink to={address} className="step">
          {roundText("story")}
        </PageLink>
      </fieldset>
      <div id={panelId}>{isOpen && <OtherAnswer policy={policy} answer={review} />}</div>
      <QuickNoteWords note={note} />
    </>
  );
}

function wordsOf({ outcome, indication }: ReviewAnswer, policy: PolicyBody): string {
  if (outcome === "remove") return roundText("recordedRemove");
  if (outcome === "ask") return roundText("recordedAsk");
  return roundText("recordedKeep", { indication: indicationLabel(indication ?? null, policy) });
}

function Reasons({ row }: { row: RoundRow }): ReactNode {
  if (row.states.length === 0) return null;
  return (
    <details className="on-screen">
      <summary>{roundText("explain")}</summary>
      <ul>
        {row.states.map(({ state, reason, policy }) => (
          <li key={state}>
            <Said>{reason}</Said>{" "}
            <span className="small">
              {policy.number === 0 ? roundText("builtIn") : roundText("ruleOf", { number: policy.number })}:{" "}
              <Said>{policy.sentence}</Said>
            </span>
          </li>
        ))}
      </ul>
    </details>
  );
}
