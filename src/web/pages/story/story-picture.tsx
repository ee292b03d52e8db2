import { type ReactNode, useId } from "react";
import { useSession } from "../../parts/session.tsx";
import { Shape } from "../../parts/shape.tsx";
import { dayWords } from "../../parts/words.ts";
import { storyText } from "../../texts/story.ts";
import { DayLane, MarkLane, placesOf, WardLane } from "./picture-lanes.tsx";
import type { Story } from "./story-rows.ts";

/** Room of a day across, and of the words before the lanes. */
const dayWidth = 34;
const laneHeight = 34;
const labelWidth = 84;

/** What a mark of the review lane means. */
const key = [
  { state: "done", words: "keyReviewed" },
  { state: "late", words: "keyLate" },
  { state: "missed", words: "keyMissed" },
  { state: "overdue", words: "keyOverdue" },
  { state: "due", words: "keyDue" },
  { state: "asked", words: "keyAsked" },
] as const;

/**
 * The catheter's days drawn to scale, one column a facility day: wards, how long it was in, reviews done and missed, when
 * it was seen, and care. Told apart by shape and place, so it reads in black and white; the tables below say the same.
 */
export function StoryPicture({ story }: { story: Story }): ReactNode {
  const id = useId();
  const { days, daysLeftOut } = story;
  const [first, last] = [days[0], days.at(-1)];
  const width = labelWidth + days.length * dayWidth + 8;
  const count = (state: string): number => days.filter(({ review }) => review === state).length;
  if (!first || !last) return null;
  return (
    <section aria-labelledby={`${id}-heading`}>
      <h2 id={`${id}-heading`}>{storyText("picture")}</h2>
      {daysLeftOut > 0 && <p className="small">{storyText("leftOut", { count: daysLeftOut })}</p>}
      <section className="wide picture" aria-label={storyText("scroll")}>
        <a className="step small" href="#entries">
          {storyText("toEntries")}
        </a>
        <svg width={width} height={laneHeight * 6} role="img" aria-labelledby={`${id}-title ${id}-words`}>
          <title id={`${id}-title`}>
            {storyText("pictureTitle", { from: dayWords(first.day), to: dayWords(last.day) })}
          </title>
          <desc id={`${id}-words`}>
            {storyText("pictureWords", {
              ...{ count: days.length, done: count("done"), late: count("late"), missed: count("missed") },
            })}
          </desc>
          <Lanes story={story} />
        </svg>
      </section>
      <ul className="plain-list row picture-key">
        {key.map(({ state, words }) => (
          <li key={state} className="row">
            <Shape state={state} /> {storyText(words)}
          </li>
        ))}
        <li>● {storyText("keySeen")}</li>
        <li>■ {storyText("keyCare")}</li>
      </ul>
    </section>
  );
}

function Lanes({ story }: { story: Story }): ReactNode {
  const { time } = useSession();
  const frame = { labelWidth, dayWidth, laneHeight };
  const place = placesOf(story, frame, time);
  const seen = story.notes.filter((note) => note.voidReason === null && note.kind === "confirmation");
  const care = story.notes.filter(
    (note) => note.voidReason === null && (note.kind === "care-check" || note.kind === "urine-output"),
  );
  return (
    <>
      <DayLane {...{ story, frame }} />
      <WardLane {...{ story, frame, place }} />
      <MarkLane
        lane={4}
        label={storyText("laneSeen")}
        shape="circle"
        at={seen.map(({ at }) => at)}
        {...{ frame, place }}
      />
      <MarkLane
        lane={5}
        label={storyText("laneCare")}
        shape="square"
        at={care.map(({ at }) => at)}
        {...{ frame, place }}
      />
    </>
  );
}
