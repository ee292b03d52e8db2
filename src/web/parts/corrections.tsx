import type { ReactNode } from "react";
import type { readCatheter } from "../../../shared/api/catheters.ts";
import type { OutputOf } from "../../../shared/endpoint.ts";
import { entryTime } from "../texts/entry-time.ts";
import { storyText } from "../texts/story.ts";
import { Said } from "./said.tsx";
import { useSession } from "./session.tsx";

/** What an entry said before it was changed. */
export type Correction = OutputOf<typeof readCatheter>["corrections"][number];

/** One thing that an entry said, in words. */
export interface SaidBefore {
  readonly label: ReactNode;
  readonly value: string;
}

/** What an entry said before each of its corrections; `words` puts its fields into words, and leaves out what is null. */
export function Corrections(props: {
  corrections: readonly Correction[];
  nameOf: (personId: number) => string;
  words?: (name: string, value: unknown, time: TimeOfEntry) => SaidBefore | null;
}): ReactNode {
  const { corrections, nameOf } = props;
  const { time } = useSession();
  const { words = plain } = props;
  return (
    <>
      {corrections.map(({ version, replacedAt, replacedBy, reason, before }) => (
        <details key={version}>
          <summary>
            <Said>
              {storyText("wasBefore", {
                when: time.short(replacedAt),
                name: nameOf(replacedBy),
                reason: reason ?? storyText("noReason"),
              })}
            </Said>
          </summary>
          <dl className="facts">
            {Object.entries(before).map(([name, value]) => (
              <Fact key={name} said={words(name, value, entryTime(time, { noHour: noHourBefore(before) }, name))} />
            ))}
          </dl>
        </details>
      ))}
    </>
  );
}

/** How a time of the old version is shown. */
type TimeOfEntry = (at: number) => string;

function plain(name: string, value: unknown, time: TimeOfEntry): SaidBefore | null {
  return value === null ? null : { label: <Said>{name}</Said>, value: oldValue(value, time) };
}

/** The times of an old version whose hour was not recorded. A removal of such a day has two times in place of one. */
function noHourBefore({ marks }: Correction["before"]): string[] {
  const prefix = "no-hour:";
  const fields = (Array.isArray(marks) ? marks.map(String) : []).filter((mark) => mark.startsWith(prefix));
  return fields.flatMap((mark) => {
    const field = mark.slice(prefix.length);
    return field === "removedAt" ? [field, "removedAfterAt", "removedBeforeAt"] : [field];
  });
}

function Fact({ said }: { said: SaidBefore | null }): ReactNode {
  if (said === null) return null;
  return (
    <div className="fact">
      <dt>{said.label}</dt>
      <dd>
        <Said>{said.value}</Said>
      </dd>
    </div>
  );
}

const instant = /^\d{4}-\d{2}-\d{2}T\d{2}:\d{2}/;

/** An old value as it is read: instants on the facility's clocks. */
function oldValue(value: unknown, short: (at: number) => string): string {
  if (typeof value === "string") return instant.test(value) ? short(Date.parse(value)) : value;
  return JSON.stringify(value);
}
