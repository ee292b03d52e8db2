import type { listLaboratoryWords as list, readOrganismName as readName } from "../../shared/api/laboratory-words.ts";
import type { OutputOf } from "../../shared/endpoint.ts";
import { wordKey } from "../../shared/laboratory-words.ts";
import { matchOrganism, proposedOrganism } from "../domain/criteria/index.ts";
import { type LaboratoryWord, laboratoryWords } from "../domain/cultures/laboratory-words.ts";
import { identityOf } from "../domain/cultures/specimen.ts";
import { seenWordings, wordsOfFacility } from "../store/laboratory-words.ts";
import type { Act } from "./act.ts";

/** The wordings that wait for a choice or have one, by column and wording. */
export async function listLaboratoryWords({ store, actor }: Act): Promise<OutputOf<typeof list>> {
  const { facilityId } = actor;
  const [versions, seen] = await store.read(async (read) => [
    await wordsOfFacility(read, facilityId),
    await seenWordings(read, facilityId),
  ]);
  const latest = new Map<string, LaboratoryWord>();
  for (const one of versions) latest.set(wordKey(one.column, one.wording), one);
  const counted = new Map(seen.map((one) => [wordKey(one.column, one.wording), one]));
  const keys = new Set([...latest.keys(), ...counted.keys()]);
  const words = [...keys].sort().flatMap((key) => {
    const chosen = latest.get(key);
    const one = chosen ?? counted.get(key);
    if (!one) return [];
    const { column, wording } = one;
    const proposal = column === "organism" ? (proposedOrganism(wording)?.key ?? null) : null;
    return [
      {
        ...{ column, wording, proposal, specimens: counted.get(key)?.specimens ?? 0 },
        ...{ choice: chosen?.choice ?? null, number: chosen?.number ?? 0, isForPast: chosen?.isForPast ?? false },
        ...{ recordedAt: chosen?.recordedAt ?? null, recordedBy: chosen?.recordedBy ?? null },
      },
    ];
  });
  return { words };
}

/** What a name is taken for in a specimen that is recorded now. */
export async function readOrganismName(
  { store, actor, now }: Act,
  { name }: { readonly name: string },
): Promise<OutputOf<typeof readName>> {
  const words = laboratoryWords(await store.read((read) => wordsOfFacility(read, actor.facilityId)));
  const { group, key } = identityOf({ name, group: null }, { words, writtenAt: now });
  return {
    ...{ group, name: group === null ? null : key, isOnList: matchOrganism(name) !== null },
    proposal: group === null ? (proposedOrganism(name)?.key ?? null) : null,
  };
}
