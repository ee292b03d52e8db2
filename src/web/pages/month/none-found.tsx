import type { ReactNode } from "react";
import { recordNoneFound, withdrawNoneFound } from "../../../../shared/api/cases.ts";
import type { readMonth } from "../../../../shared/api/months.ts";
import type { Month } from "../../../../shared/day.ts";
import type { OutputOf } from "../../../../shared/endpoint.ts";
import { ProblemNotice } from "../../parts/form/problem-notice.tsx";
import { VoidForm } from "../../parts/form/void-form.tsx";
import { Said } from "../../parts/said.tsx";
import { useSession } from "../../parts/session.tsx";
import { useRecording } from "../../parts/use-recording.ts";
import { daysOfMonth } from "../../parts/words.ts";
import { infectionsText as text } from "../../texts/infections.ts";

type Ward = OutputOf<typeof readMonth>["infections"][number];

interface NoneFoundProps {
  readonly ward: Ward;
  readonly month: Month;
  readonly code: string;
  readonly again: () => void;
}

/** Whether somebody confirmed that a watched ward had no event; who works on cultures confirms it once the month is over. */
export function NoneFound(props: NoneFoundProps): ReactNode {
  const { ward, month } = props;
  const { may, time, now } = useSession();
  const { isWatched, cautis, noneFound } = ward;
  if (!isWatched || cautis > 0) return null;
  if (noneFound) return <Found {...props} noneFound={noneFound} />;
  if (!may("judge-cases")) return text("notConfirmed");
  if (time.dayOf(now()) <= daysOfMonth(month).last) return text("monthLasts");
  return <Confirm {...props} />;
}

function Confirm({ ward: { wardId }, month, code, again }: NoneFoundProps): ReactNode {
  const { sending, send } = useRecording(recordNoneFound);
  const confirm = async (): Promise<void> => {
    const reply = await send({ wardId, month });
    if (reply.state === "answered") again();
  };
  return (
    <>
      <ProblemNotice sending={sending} sendAgain={() => void confirm()} />
      <button type="button" disabled={sending.state === "sending"} onClick={() => void confirm()}>
        {text("confirmNone", { ward: code })}
      </button>
    </>
  );
}

function Found(props: NoneFoundProps & { noneFound: NonNullable<Ward["noneFound"]> }): ReactNode {
  const { noneFound, ward, again } = props;
  const { may, time } = useSession();
  const { sending, send } = useRecording(withdrawNoneFound);
  const { noneFoundId, version, at } = noneFound;
  return (
    <>
      <Said>{text("confirmed", { when: time.short(at) })}</Said>
      {may("judge-cases") && (
        <details className="on-screen">
          <summary>{text("withdraw")}</summary>
          <VoidForm
            {...{ sending, again }}
            title={text("withdraw")}
            send={(said) => send({ wardId: ward.wardId, noneFoundId, ...said })}
            seenVersion={version}
            labels={{}}
          />
        </details>
      )}
    </>
  );
}
