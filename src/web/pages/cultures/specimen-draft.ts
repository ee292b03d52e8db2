import type { recordSpecimen } from "../../../../shared/api/cultures.ts";
import type { OrganismGroup, SpecimenKind, SpecimenMethod, SpecimenStatus } from "../../../../shared/culture-words.ts";
import type { InputOf } from "../../../../shared/endpoint.ts";
import type { FacilityTime } from "../../parts/facility-time.ts";
import type { Difference } from "../../parts/form/stale-choice.tsx";
import { specimenMethodText, specimenStatusText } from "../../texts/culture-words.ts";
import { culturesText } from "../../texts/cultures.ts";
import { entryCharted, entryTime } from "../../texts/entry-time.ts";
import { fieldText } from "../../texts/fields.ts";
import { organismsWords, type Specimen } from "./culture-rows.ts";

/** An organism as it is being written down. */
export interface OrganismDraft {
  /** Tells the rows of a draft apart. */
  readonly row: number;
  readonly name: string;
  readonly count: string;
  /** null: as the list says. */
  readonly group: OrganismGroup | null;
  /** The group is to hold for each specimen with this wording. */
  readonly isKept?: boolean;
}

/** What was written down of a specimen so far. */
export interface SpecimenDraft {
  readonly kind: SpecimenKind;
  readonly collectedAt: string;
  readonly method: SpecimenMethod;
  readonly status: SpecimenStatus;
  readonly number: string;
  /** null: nobody has said yet whether anything grew. */
  readonly growth: "some" | "none" | null;
  readonly organisms: readonly OrganismDraft[];
}

/** What is recorded where the laboratory reports that nothing grew: an empty list says nothing. */
const noGrowth = "No growth";
const noOrganism: OrganismDraft = { row: 0, name: "", count: "", group: null };

/** A urine culture of which nothing is known yet. The time is asked for: the day decides. */
export const emptySpecimen: SpecimenDraft = {
  ...{ kind: "urine", collectedAt: "", method: "culture", status: "final", number: "" },
  ...{ growth: null, organisms: [noOrganism] },
};

/** The draft with one more organism. */
export function withOrganism({ organisms }: SpecimenDraft): Pick<SpecimenDraft, "organisms"> {
  const row = 1 + Math.max(0, ...organisms.map((one) => one.row));
  return { organisms: [...organisms, { ...noOrganism, row }] };
}

/** A specimen as a draft of its correction. */
export function draftOf(specimen: Specimen, time: FacilityTime): SpecimenDraft {
  const { kind, collectedAt, method, status, number, organisms } = specimen;
  const isReported = status === "final" || status === "corrected";
  const isGrown = organisms.some(({ group }) => group !== "no-growth");
  return {
    ...{ kind, method, status, number: number ?? "" },
    collectedAt: entryCharted(time, specimen, "collectedAt")(collectedAt),
    growth: isGrown ? "some" : isReported || organisms.length > 0 ? "none" : null,
    organisms: !isGrown
      ? [noOrganism]
      : organisms.map(({ name, count, group, isOnList }, row) => ({
          ...{ row, name, count: count ?? "", group: isOnList ? null : group },
        })),
  };
}

/** Whether the report is far enough to have named what grew. */
export function isReported({ status }: Pick<SpecimenDraft, "status">): boolean {
  return status !== "pending" && status !== "withdrawn";
}

/** Whether what has to be said was said: a final report without a word about growth is not taken as no growth. */
export function isSaid(draft: SpecimenDraft): boolean {
  const { collectedAt, status, growth } = draft;
  return collectedAt !== "" && (growth !== null || !(status === "final" || status === "corrected"));
}

/** The organisms as they are sent; rows without a name are left out. */
export function organismsOf(draft: SpecimenDraft): NonNullable<InputOf<typeof recordSpecimen>["organisms"]> {
  if (draft.status === "pending" || draft.status === "withdrawn") return [];
  if (draft.growth === "none") return draft.status === "preliminary" ? [] : [{ name: noGrowth }];
  if (draft.growth !== "some") return [];
  return draft.organisms.flatMap(({ name, count, group }) =>
    name.trim() === ""
      ? []
      : [{ name: name.trim(), ...(count.trim() === "" ? {} : { count: count.trim() }), ...(group ? { group } : {}) }],
  );
}

/** The groups that are to hold for each specimen with the same wording. */
export function keptWords({ growth, organisms }: SpecimenDraft) {
  return growth !== "some"
    ? []
    : organisms.flatMap(({ name, group, isKept }) =>
        isKept && group !== null ? [{ column: "organism" as const, wording: name.trim(), choice: group }] : [],
      );
}

/** What a new specimen says. */
export function specimenInput(draft: SpecimenDraft): Omit<InputOf<typeof recordSpecimen>, "patientId"> {
  const { kind, collectedAt, method, status, number } = draft;
  const own = number.trim() === "" ? {} : { number: number.trim() };
  return { kind, collectedAt, method, status, ...own, organisms: organismsOf(draft) };
}

/** What was changed of a specimen; what was not touched is not sent, so that times keep their seconds. */
export function changedOf(before: SpecimenDraft, after: SpecimenDraft) {
  const { kind, collectedAt, method, status, number } = after;
  const isSame = JSON.stringify(organismsOf(before)) === JSON.stringify(organismsOf(after));
  return {
    ...(kind === before.kind ? {} : { kind }),
    ...(collectedAt === before.collectedAt ? {} : { collectedAt }),
    ...(method === before.method ? {} : { method }),
    ...(status === before.status ? {} : { status }),
    ...(number === before.number ? {} : { number: number.trim() || null }),
    ...(isSame ? {} : { organisms: organismsOf(after) }),
  };
}

/** What differs from the specimen as somebody else left it meanwhile. */
export function specimenDifferences(
  draft: SpecimenDraft,
  current: Readonly<Record<string, unknown>>,
  time: FacilityTime,
): Difference[] {
  const theirs = current as unknown as Pick<Specimen, "method" | "status" | "organisms" | "noHour"> & {
    collectedAt: string;
  };
  const mineGrew = organismsOf(draft).map(({ name, count = null, group = null }) => ({ name, count, group }));
  const none = fieldText("notRecorded");
  return [
    {
      label: culturesText("collectedAt"),
      mine: draft.collectedAt.replace("T", " "),
      theirs: entryTime(time, theirs, "collectedAt")(Date.parse(theirs.collectedAt)),
    },
    {
      label: culturesText("status"),
      mine: specimenStatusText(draft.status),
      theirs: specimenStatusText(theirs.status),
    },
    {
      label: culturesText("method"),
      mine: specimenMethodText(draft.method),
      theirs: specimenMethodText(theirs.method),
    },
    {
      label: culturesText("organisms"),
      mine: organismsWords(mineGrew) ?? none,
      theirs: organismsWords(theirs.organisms) ?? none,
    },
  ];
}
