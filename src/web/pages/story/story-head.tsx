import type { ReactNode } from "react";
import { Said } from "../../parts/said.tsx";
import { useSession } from "../../parts/session.tsx";
import { Term } from "../../parts/term.tsx";
import { patientText } from "../../texts/patient.ts";
import { storyText } from "../../texts/story.ts";
import { kindText } from "../../texts/words.ts";
import { outWords, type Story, sinceWords } from "./story-rows.ts";

/** Whose catheter it is, what it is, since when, and which day it is. */
export function StoryHead({ story }: { story: Story }): ReactNode {
  const { time } = useSession();
  const day = story.days.at(-1)?.eligibilityDay ?? null;
  return (
    <dl className="card who-card">
      <div>
        <dt>{patientText("patient")}</dt>
        <dd>
          <strong>
            <Said>{story.identifier}</Said>
          </strong>
        </dd>
      </div>
      <div>
        <dt>{storyText("kind")}</dt>
        <dd>{kindText(story.kind)}</dd>
      </div>
      <div>
        <dt>{storyText("since")}</dt>
        <dd>{sinceWords(story, time)}</dd>
      </div>
      <div>
        <dt>{storyText("out")}</dt>
        <dd>{outWords(story, time) ?? storyText("inPlace")}</dd>
      </div>
      {day !== null && (
        <div>
          <dt>
            <Term name="eligibility-day" />
          </dt>
          <dd>{day}</dd>
        </div>
      )}
    </dl>
  );
}
