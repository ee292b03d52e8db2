import { type ReactNode, useState } from "react";
import { storyText } from "../../texts/story.ts";
import type { Reply } from "../server.ts";
import type { Sending } from "../use-recording.ts";
import { faultsOf } from "./faults.ts";
import { TextField } from "./text-field.tsx";
import { UpdateForm } from "./update-form.tsx";

/** Voids an entry that was recorded in error, with the reason; what it said stays to be read. */
export function VoidForm(props: {
  title: string;
  sending: Sending<unknown>;
  send: (said: { seenVersion: number; reason: string }) => Promise<Reply<unknown>>;
  again: () => void;
  seenVersion: number;
  /** What is shown of the entry when somebody changed it meanwhile. */
  labels: Readonly<Record<string, string>>;
}): ReactNode {
  const { title, sending, send, again, seenVersion, labels } = props;
  const [reason, setReason] = useState("");
  const record = async (version: number): Promise<void> => {
    const reply = await send({ seenVersion: version, reason });
    if (reply.state === "answered") again();
  };
  return (
    <UpdateForm
      {...{ title, sending, record, again, seenVersion }}
      button={storyText("voidDo")}
      isReady={reason.trim() !== ""}
      mine={{ voidReason: reason }}
      labels={{ voidReason: title, ...labels }}
    >
      <TextField
        pointer="/reason"
        label={storyText("reason")}
        faults={faultsOf(sending)}
        value={reason}
        change={setReason}
      />
    </UpdateForm>
  );
}
