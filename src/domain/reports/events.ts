import { caseStates } from "../../../shared/case-words.ts";
import { determinationCaution, onsets } from "../../../shared/culture-words.ts";
import type { Sheet, SheetCell, SheetColumn } from "../../../shared/sheet.ts";
import type { SurveillanceEvent } from "../criteria/index.ts";
import { criterionTitle } from "../cultures/summary-words.ts";
import { type DayNumber, dayText } from "../days/day-number.ts";
import { monthOf } from "../days/month.ts";

/** An event of a period. */
export interface EventFacts {
  readonly ward: string;
  readonly editionId: string;
  readonly event: SurveillanceEvent;
  readonly state: keyof typeof caseStates;
  /** Whether its ward was under surveillance in the month of the event. */
  readonly isWatched: boolean;
  /** The reason of a disagreement that holds; null where nobody disagrees. */
  readonly disagreement: string | null;
  /** The patient's number in the hospital, for who may see the patient; null for all others. */
  readonly identifier: string | null;
  /** Open points that the facility reads otherwise than the edition on the date of event, in words. */
  readonly nonDefault: readonly string[];
}

const columns: SheetColumn[] = [
  { key: "month", label: "Month of event", kind: "text", unit: null },
  { key: "date", label: "Date of event", kind: "day", unit: null },
  { key: "ward", label: "Location of attribution", kind: "text", unit: null },
  { key: "patient", label: "Patient", kind: "text", unit: null },
  { key: "criterion", label: "Criterion", kind: "text", unit: null },
  { key: "edition", label: "Edition", kind: "text", unit: null },
  { key: "catheter", label: "Catheter-associated", kind: "text", unit: null },
  { key: "onset", label: "Onset", kind: "text", unit: null },
  { key: "organisms", label: "Organisms", kind: "text", unit: null },
  { key: "bloodstream", label: "Secondary bloodstream infection", kind: "text", unit: null },
  { key: "work", label: "Confirmed", kind: "text", unit: null },
  { key: "disagreement", label: "Disagreement", kind: "text", unit: null },
  { key: "counted", label: "Counted as CAUTI", kind: "text", unit: null },
  { key: "non_default_readings", label: "Non-default readings", kind: "text", unit: null },
];

/** Why an event of the list is not one of the CAUTIs that a month counts, in the order in which it is looked at. */
const notCounted = {
  "not-cauti": "not catheter-associated",
  unwatched: "not under surveillance",
  unconfirmed: "not confirmed",
} as const;
type NotCounted = keyof typeof notCounted;

/** Null: it is counted. */
function whyNotCounted({ event, isWatched, state }: EventFacts): NotCounted | null {
  if (!event.isCauti) return "not-cauti";
  if (!isWatched) return "unwatched";
  return state === "confirmed" || state === "disagreed" ? null : "unconfirmed";
}

/** How many of the events months and comparisons count, and where the others are and why they are not counted. */
export function countedSentences(events: readonly EventFacts[]): string[] {
  const counted = events.filter((one) => whyNotCounted(one) === null).length;
  const cautis = counted === 1 ? "1 CAUTI is" : `${counted} CAUTIs are`;
  const others = new Map<string, number>();
  for (const one of events) {
    const why = whyNotCounted(one);
    if (why === null) continue;
    const where = `on ${one.ward}, ${notCounted[why]}`;
    others.set(where, (others.get(where) ?? 0) + 1);
  }
  const listed = [...others].map(([where, count]) => `${count} ${where}`).join("; ");
  return [
    `${cautis} counted, as in the months and the comparison of units.`,
    ...(listed === "" ? [] : [`Not counted: ${listed}.`]),
  ];
}

/**
 * The infections of a period, one a row. By whom and on which day nobody can tell who may not see the patient: those
 * cells are empty, and the month stands for the day. What somebody wrote may name a patient, so it is left out as well.
 */
export function eventsSheet(
  events: readonly EventFacts[],
  about: { readonly facility: string; readonly first: DayNumber; readonly last: DayNumber; readonly asOf: number },
): Sheet {
  const cautions = [
    determinationCaution,
    "Events present on admission belong to no unit and are not listed. What waits for confirmation may still change.",
  ];
  if (events.some(({ identifier }) => identifier === null))
    cautions.push("Patients whom you may not see are left out: the month replaces the day of their events.");
  return {
    id: "events",
    title: `Urinary tract infections, ${about.facility}`,
    period: `${dayText(about.first)} to ${dayText(about.last)}`,
    asOf: new Date(about.asOf).toISOString(),
    sources: [
      "CDC Patient Safety Component Manual, chapter 7, or the edition that each event names; each event has its derivation",
    ],
    columns,
    rows: events.map(rowOf),
    total: null,
    cautions,
  };
}

function rowOf(facts: EventFacts): SheetCell[] {
  const { ward, editionId, event, state, disagreement, identifier, nonDefault } = facts;
  const why = whyNotCounted(facts);
  const isKnown = identifier !== null;
  const { dateOfEvent, criterion, deviceAssociated, onset, pathogens, addedPathogens, secondaryBloodstream } = event;
  return [
    monthOf(dateOfEvent),
    isKnown ? dayText(dateOfEvent) : null,
    ward,
    identifier,
    ...[criterionTitle(editionId, criterion), editionId, deviceAssociated ? "yes" : "no", onsets[onset]],
    [...pathogens, ...addedPathogens].join("; "),
    secondaryBloodstream.length > 0 ? "yes" : "no",
    caseStates[state],
    isKnown ? (disagreement ?? "") : null,
    why === null ? "yes" : `no: ${notCounted[why]}`,
    nonDefault.join(". "),
  ];
}
