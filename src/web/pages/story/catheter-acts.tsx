import { type ReactNode, useState } from "react";
import { correctCatheter, voidCatheter } from "../../../../shared/api/catheters.ts";
import type { InputOf } from "../../../../shared/endpoint.ts";
import type { FacilityTime } from "../../parts/facility-time.ts";
import { faultsOf } from "../../parts/form/faults.ts";
import { TextField } from "../../parts/form/text-field.tsx";
import { TimeField } from "../../parts/form/time-field.tsx";
import { UpdateForm } from "../../parts/form/update-form.tsx";
import { VoidForm } from "../../parts/form/void-form.tsx";
import { useSession } from "../../parts/session.tsx";
import { useRecording } from "../../parts/use-recording.ts";
import { entryCharted } from "../../texts/entry-time.ts";
import { insertionText } from "../../texts/insertion.ts";
import { storyText } from "../../texts/story.ts";
import { outWords, type Story } from "./story-rows.ts";

/** Corrects or voids the catheter itself, always with a reason; what it said is kept. */
export function CatheterActs({ story, again }: { story: Story; again: () => void }): ReactNode {
  return (
    <details className="on-screen">
      <summary>{storyText("catheterActs")}</summary>
      <CorrectCatheter story={story} again={again} />
      <VoidCatheter story={story} again={again} />
    </details>
  );
}

interface Text {
  readonly insertedAt: string;
  readonly removedAt: string;
  readonly sizeFr: string;
  readonly balloonMl: string;
}

/** A time of removal takes the place of the two times between which it was. */
const noRemoval = { removedAfterAt: null, removedBeforeAt: null };

/** What was changed of the texts; what was not touched is not sent, so that times keep their seconds. */
function changedFields(before: Text, after: Text): Partial<InputOf<typeof correctCatheter>> {
  const number = (text: string): number | null => (text.trim() === "" ? null : Number(text.replace(",", ".")));
  return {
    ...(after.insertedAt === before.insertedAt ? {} : { insertedAt: after.insertedAt || null }),
    ...(after.removedAt === before.removedAt ? {} : { ...noRemoval, removedAt: after.removedAt || null }),
    ...(after.sizeFr === before.sizeFr ? {} : { sizeFr: number(after.sizeFr) }),
    ...(after.balloonMl === before.balloonMl ? {} : { balloonMl: number(after.balloonMl) }),
  };
}

function CorrectCatheter({ story, again }: { story: Story; again: () => void }): ReactNode {
  const { time } = useSession();
  const isOfDay = story.noHour?.includes("removedAt");
  const [before] = useState<Text>(() => ({
    insertedAt: entryCharted(time, story, "insertedAt")(story.insertedAt),
    removedAt: entryCharted(time, story, "removedAt")(isOfDay ? story.removedAfterAt : story.removedAt),
    sizeFr: story.sizeFr === null ? "" : String(story.sizeFr),
    balloonMl: story.balloonMl === null ? "" : String(story.balloonMl),
  }));
  const [text, setText] = useState(before);
  const [reason, setReason] = useState("");
  const { sending, send } = useRecording(correctCatheter);
  const record = async (seenVersion: number, confirm: readonly string[] = []): Promise<void> => {
    const changed = changedFields(before, text);
    const reply = await send({ catheterId: story.catheterId, seenVersion, ...changed, reason, confirm: [...confirm] });
    if (reply.state === "answered") again();
  };
  const faults = faultsOf(sending);
  const set = (name: keyof Text) => (value: string) => setText({ ...text, [name]: value });
  const labels = {
    insertedAt: storyText("insertedAt"),
    removedAt: storyText("removedAt"),
    sizeFr: storyText("size"),
    balloonMl: storyText("balloon"),
  };
  const of = (name: keyof Text) => ({
    faults,
    pointer: `/${name}`,
    label: labels[name],
    value: text[name],
    change: set(name),
  });
  return (
    <UpdateForm
      {...{ sending, record, again, labels }}
      title={storyText("correctIt")}
      button={storyText("correctDo")}
      seenVersion={story.version}
      isReady={reason.trim() !== ""}
      mine={{ ...text }}
      confirm={(pointers) => void record(story.version, pointers)}
    >
      <TimeField {...of("insertedAt")} />
      <TimeField {...of("removedAt")} help={isOfDay ? undefined : betweenWords(story, time)} />
      <TextField {...of("sizeFr")} inputMode="decimal" unit={insertionText("unitFr")} />
      <TextField {...of("balloonMl")} inputMode="decimal" unit={insertionText("unitMl")} />
      <TextField pointer="/reason" label={storyText("reason")} faults={faults} value={reason} change={setReason} />
    </UpdateForm>
  );
}

/** Between which times the removal is recorded; nothing for one with a time, or none. */
function betweenWords(story: Story, time: FacilityTime): string | undefined {
  return story.removedAfterAt === null ? undefined : (outWords(story, time) ?? undefined);
}

function VoidCatheter({ story, again }: { story: Story; again: () => void }): ReactNode {
  const { sending, send } = useRecording(voidCatheter);
  return (
    <VoidForm
      {...{ sending, again }}
      title={storyText("voidCatheter")}
      send={(said) => send({ catheterId: story.catheterId, ...said })}
      seenVersion={story.version}
      labels={{ insertedAt: storyText("insertedAt"), removedAt: storyText("removedAt") }}
    />
  );
}
