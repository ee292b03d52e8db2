import { type ReactNode, useId } from "react";
import { entryTime } from "../../texts/entry-time.ts";
import { fieldText } from "../../texts/fields.ts";
import type { FacilityTime } from "../facility-time.ts";
import { useSession } from "../session.tsx";
import { FieldScope } from "./faults.ts";
import { RecordForm, type RecordFormProps } from "./record-form.tsx";
import { type Difference, StaleChoice } from "./stale-choice.tsx";

type Values = Readonly<Record<string, unknown>>;

type FormOfEntry = Omit<RecordFormProps, "record" | "problem" | "labelledBy"> & {
  /** Records the change of the version that the person decided on. */
  readonly record: (seenVersion: number) => Promise<unknown>;
  /** Reads the entry anew. */
  readonly again: () => void;
  readonly seenVersion: number;
};

/**
 * The form of a change of an entry, without a heading. When somebody else changed the entry meanwhile, both states stand
 * beside each other and the person chooses: `compare` says what differs from the entry as it is by now.
 */
export function EntryForm({
  again,
  seenVersion,
  compare,
  labelledBy,
  record,
  ...form
}: FormOfEntry & {
  readonly compare: (current: Values) => Difference[];
  readonly labelledBy?: string;
}): ReactNode {
  const { sending } = form;
  const current = sending.state === "refused" ? sending.problem.document.current : undefined;
  const version = typeof current?.version === "number" ? current.version : seenVersion;
  const stale = current && (
    <StaleChoice differences={compare(current)} useMine={() => void record(version)} useTheirs={again} />
  );
  return (
    <RecordForm
      {...form}
      {...(stale ? { problem: stale } : {})}
      {...(labelledBy === undefined ? {} : { labelledBy })}
      record={() => record(seenVersion)}
    />
  );
}

/** A change of an entry under a heading: `mine` is what the person would record, `labels` names what is compared. */
export function UpdateForm(
  props: FormOfEntry & {
    readonly title: string;
    readonly mine: Values;
    readonly labels: Readonly<Record<string, string>>;
  },
): ReactNode {
  const { title, mine, labels, children, ...form } = props;
  const { time } = useSession();
  const id = useId();
  return (
    <section>
      <h4 id={id}>{title}</h4>
      <FieldScope value={id}>
        <EntryForm {...form} isSmall labelledBy={id} compare={(current) => differencesOf(mine, current, labels, time)}>
          {children}
        </EntryForm>
      </FieldScope>
    </section>
  );
}

/** What a person would record and what is there, for each named field. */
export function differencesOf(
  mine: Values,
  theirs: Values,
  labels: Readonly<Record<string, string>>,
  time: Pick<FacilityTime, "short" | "shortDay">,
): Difference[] {
  const noHour = Array.isArray(theirs.noHour) ? theirs.noHour.map(String) : [];
  return Object.entries(labels).map(([name, label]) => ({
    label,
    mine: valueWords(mine[name], time.short),
    theirs: valueWords(theirsOf(theirs, name, noHour), entryTime(time, { noHour }, name)),
  }));
}

/** A value of an entry. A removal of which the day alone is known has no time, and two times around it. */
function theirsOf(theirs: Values, name: string, noHour: readonly string[]): unknown {
  return name === "removedAt" && noHour.includes(name) ? (theirs.removedAt ?? theirs.removedAfterAt) : theirs[name];
}

const instant = /^\d{4}-\d{2}-\d{2}T\d{2}:\d{2}:\d{2}/;

function valueWords(value: unknown, short: (at: number) => string): string {
  if (value === null || value === undefined || value === "") return fieldText("notRecorded");
  if (typeof value === "string") return instant.test(value) ? short(Date.parse(value)) : value.replace("T", " ");
  return String(value);
}
