import type { readCase } from "../../../../shared/api/cases.ts";
import { type EditionId, editionNames } from "../../../../shared/edition-words.ts";
import type { OutputOf } from "../../../../shared/endpoint.ts";

/** One culture with everything that its page shows. */
export type Case = OutputOf<typeof readCase>;
export type Determination = NonNullable<Case["determination"]>;
export type Step = Determination["derivation"][number];
type Evidence = Step["evidence"][number];

/** Where an entry that a step rests on stands. An organism stands with its specimen. */
export function addressOf({ kind, id }: Evidence, { patientId, picture }: Case): string {
  const record = `/patients/${patientId}`;
  if (kind === "organism") {
    const of = picture.specimens.find(({ organisms }) => organisms.some(({ organismId }) => organismId === id));
    return of ? `${record}/cultures#specimen-${of.specimenId}` : `${record}/cultures`;
  }
  if (kind === "catheter") return `${record}/catheters/${id}`;
  if (kind === "specimen" || kind === "sign" || kind === "finding") return `${record}/cultures#${kind}-${id}`;
  return record;
}

/** The title of an edition, whose id stands with every determination. */
export function editionName(editionId: string): string {
  return editionNames[editionId as EditionId] ?? editionId;
}

/** What has to be looked up before it can be told, each once. */
export function lookUpsOf({ determination }: Case): string[] {
  const steps = determination?.derivation ?? [];
  return [...new Set(steps.flatMap(({ lookUp }) => (lookUp === null ? [] : [lookUp])))];
}
