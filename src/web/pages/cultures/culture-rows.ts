import type { readCultures } from "../../../../shared/api/cultures.ts";
import { findingKind, findingKinds } from "../../../../shared/case-words.ts";
import { signFinding, specimenMethod, specimenStatus } from "../../../../shared/culture-words.ts";
import type { OutputOf } from "../../../../shared/endpoint.ts";
import type { Correction, SaidBefore } from "../../parts/corrections.tsx";
import type { FacilityTime } from "../../parts/facility-time.ts";
import {
  findingText,
  organismGroupText,
  specimenKindText,
  specimenMethodText,
  specimenStatusText,
} from "../../texts/culture-words.ts";
import { culturesText } from "../../texts/cultures.ts";
import { entryTime } from "../../texts/entry-time.ts";
import { findingsText } from "../../texts/findings.ts";

/** A patient's specimens and signs as the server tells them. */
export type Cultures = OutputOf<typeof readCultures>;
export type Specimen = Cultures["specimens"][number];
export type Sign = Cultures["signs"][number];
export type Finding = Cultures["findings"][number];
type Organism = Pick<Specimen["organisms"][number], "name" | "count" | "group">;

/** The corrections of one entry, such as `specimen 12`, oldest first. */
export function correctionsOf({ corrections }: Cultures, entry: string): readonly Correction[] {
  return corrections.filter((correction) => correction.entry === entry);
}

/** What grew, in one line; null where no organism stands. */
export function organismsWords(organisms: readonly Organism[]): string | null {
  if (organisms.length === 0) return null;
  return organisms
    .map(({ name, count, group }) => {
      if (group === "no-growth") return name;
      const said = [count ?? culturesText("countMissing"), ...(group === null ? [] : [organismGroupText(group)])];
      return `${name} (${said.join(", ")})`;
    })
    .join("; ");
}

const labels = {
  collectedAt: "collectedAt",
  method: "method",
  status: "status",
  number: "number",
  organisms: "organisms",
  day: "day",
  at: "time",
  finding: "finding",
  temperature: "temperature",
  otherCause: "otherCause",
  lastDay: "lastDay",
  readAt: "readAt",
} as const;

/** A field of an older version in words; null for what people do not read. */
export function wordsBefore(name: string, value: unknown, time: (at: number) => string): SaidBefore | null {
  const key = labels[name as keyof typeof labels];
  if (name === "present") return { label: findingsText("present"), value: findingsText(value ? "isSo" : "isNotSo") };
  if (name === "cellsPerMm3" && value !== null) return { label: findingsText("cells"), value: String(value) };
  if (key === undefined || value === null || value === false) return null;
  return { label: culturesText(key), value: valueBefore(name as keyof typeof labels, value, time) };
}

function valueBefore(name: keyof typeof labels, value: unknown, time: (at: number) => string): string {
  if (name === "organisms") return organismsWords(value as readonly Organism[]) ?? culturesText("grewNone");
  if (name === "status") return specimenStatusText(specimenStatus.parse(value));
  if (name === "method") return specimenMethodText(specimenMethod.parse(value));
  // Of a finding it names its kind, of a sign what was found.
  if (name === "finding")
    return signFinding.safeParse(value).data
      ? findingText(signFinding.parse(value))
      : findingKinds[findingKind.parse(value)];
  if (name === "temperature") return temperatureBefore(value as { hundredths: number; unit: string });
  if (name === "collectedAt" || name === "at" || name === "readAt") return time(Date.parse(String(value)));
  // A day is kept as its number.
  if (name === "day" || name === "lastDay") return new Date(Number(value) * 86_400_000).toISOString().slice(0, 10);
  return String(value);
}

function temperatureBefore({ hundredths, unit }: { hundredths: number; unit: string }): string {
  return `${(hundredths / 100).toFixed(2).replace(/0$/, "")} °${unit}`;
}

/** `Urine of Nov 20, 09:30`. */
export function specimenHeading(specimen: Specimen, time: FacilityTime): string {
  const { kind, collectedAt } = specimen;
  const when = entryTime(time, specimen, "collectedAt")(collectedAt);
  return culturesText("heading", { kind: specimenKindText(kind), when });
}
