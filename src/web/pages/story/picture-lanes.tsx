import type { ReactNode } from "react";
import type { FacilityTime } from "../../parts/facility-time.ts";
import { useSession } from "../../parts/session.tsx";
import { Shape } from "../../parts/shape.tsx";
import { storyText } from "../../texts/story.ts";
import type { Story } from "./story-rows.ts";

/** The measures of the picture, in its own units. */
export interface Frame {
  readonly labelWidth: number;
  readonly dayWidth: number;
  readonly laneHeight: number;
}

/** Where an instant lies across, within the days that are drawn. */
export type PlaceOf = (at: number) => number;

const hours = /T(\d\d):(\d\d)/;

/** Places instants by their facility day and local hour: a day is as wide as any other, also when clocks change. */
export function placesOf({ days }: Story, { labelWidth, dayWidth }: Frame, time: FacilityTime): PlaceOf {
  const columns = new Map(days.map(({ day }, i) => [day as string, i]));
  const [first, last] = [days[0]?.day ?? "", days.at(-1)?.day ?? ""];
  return (at) => {
    const charted = time.charted(at);
    const day = charted.slice(0, 10);
    if (day < first) return labelWidth;
    if (day > last) return labelWidth + days.length * dayWidth;
    const [, hour = "0", minute = "0"] = hours.exec(charted) ?? [];
    const part = (Number(hour) + Number(minute) / 60) / 24;
    return labelWidth + ((columns.get(day) ?? 0) + part) * dayWidth;
  };
}

/** The days of the month along the top with a line each, and the state of each day's review in the fourth lane. */
export function DayLane({ story, frame }: { story: Story; frame: Frame }): ReactNode {
  const { labelWidth, dayWidth, laneHeight } = frame;
  const size = 16;
  return (
    <>
      <Label lane={3} words={storyText("laneReview")} frame={frame} />
      {story.days.map(({ day, review }, i) => {
        const x = labelWidth + i * dayWidth;
        return (
          <g key={day}>
            <line x1={x} x2={x} y1={laneHeight * 0.7} y2={laneHeight * 6} className="picture-line" />
            <text x={x + dayWidth / 2} y={laneHeight * 0.6} textAnchor="middle" className="picture-day">
              {Number(day.slice(8)) === 1 || i === 0
                ? `${Number(day.slice(5, 7))}/${Number(day.slice(8))}`
                : Number(day.slice(8))}
            </text>
            {review !== "not-due" && (
              <svg
                x={x + (dayWidth - size) / 2}
                y={laneHeight * 3 + (laneHeight - size) / 2}
                width={size}
                height={size}
                aria-hidden="true"
              >
                <Shape state={review} />
              </svg>
            )}
          </g>
        );
      })}
    </>
  );
}

/** The wards as bands with their codes, and the time in place as a bar that is open while the catheter is in. */
export function WardLane({ story, frame, place }: { story: Story; frame: Frame; place: PlaceOf }): ReactNode {
  const { wardCode, now } = useSession();
  const { laneHeight } = frame;
  const end = story.removedAt ?? story.removedAfterAt;
  const start = place(story.insertedAt ?? 0);
  const stop = place(end ?? now());
  return (
    <>
      <Label lane={1} words={storyText("laneWard")} frame={frame} />
      {story.wards.map(({ wardId, startAt, endAt }) => {
        const x = place(startAt);
        const width = Math.max(place(endAt ?? now()) - x, 3);
        return (
          <g key={startAt}>
            <rect x={x} y={laneHeight + 5} width={width} height={laneHeight - 10} className="picture-ward" />
            <text x={x + 4} y={laneHeight * 1.62} className="picture-day">
              {width > 30 ? wardCode(wardId) : ""}
            </text>
          </g>
        );
      })}
      <Label lane={2} words={storyText("laneCatheter")} frame={frame} />
      <rect
        x={start}
        y={laneHeight * 2.35}
        width={Math.max(stop - start, 3)}
        height={laneHeight * 0.3}
        className="picture-bar"
      />
      {story.insertedAt !== null && (
        <path d={`M${start} ${laneHeight * 2.15}v${laneHeight * 0.7}`} className="picture-end" />
      )}
      {end !== null && <path d={`M${stop} ${laneHeight * 2.15}v${laneHeight * 0.7}`} className="picture-end" />}
    </>
  );
}

/** Marks of one kind at their times. */
export function MarkLane(props: {
  lane: number;
  label: string;
  shape: "circle" | "square";
  at: readonly number[];
  frame: Frame;
  place: PlaceOf;
}): ReactNode {
  const { lane, label, shape, at, frame, place } = props;
  const y = (lane + 0.5) * frame.laneHeight;
  return (
    <>
      <Label lane={lane} words={label} frame={frame} />
      {at.map((instant) =>
        shape === "circle" ? (
          <circle key={instant} cx={place(instant)} cy={y} r={5} className="picture-mark" />
        ) : (
          <rect key={instant} x={place(instant) - 5} y={y - 5} width={10} height={10} className="picture-mark" />
        ),
      )}
    </>
  );
}

function Label({ lane, words, frame }: { lane: number; words: string; frame: Frame }): ReactNode {
  return (
    <text x={0} y={(lane + 0.6) * frame.laneHeight} className="picture-label">
      {words}
    </text>
  );
}
