import type {
  listLaboratoryWords as list,
  readOrganismName as readName,
} from "../../../shared/api/laboratory-words.ts";
import type { OutputOf } from "../../../shared/endpoint.ts";
import { wordKey } from "../../../shared/laboratory-words.ts";
import { matchOrganism, proposedOrganism } from "../../domain/criteria/index.ts";
import { type LaboratoryWord, laboratoryWords } from "../../domain/cultures/laboratory-words.ts";
import { identityOf } from "../../domain/cultures/specimen.ts";
import { pastProgress, seenWordings, wordsOfFacility } from "../../store/laboratory-words.ts";
import type { Act } from "../act.ts";

/** The wordings that wait for a choice or have one, by column and wording. */
export async function listLaboratoryWords({ store, actor }: Act): Promise<OutputOf<typeof list>> {
  const { facilityId } = actor;
  const { latest, seen, past } = await store.read(async (read) => {
    const versions = await wordsOfFacility(read, facilityId);
    const found = new Map<string, LaboratoryWord>(versions.map((one) => [wordKey(one.column, one.wording), one]));
    const progress = new Map<number, Awaited<ReturnType<typeof pastProgress>>>();
    for (const one of found.values()) progress.set(one.id, await pastProgress(read, facilityId, one));
    return { latest: found, seen: await seenWordings(read, facilityId), past: progress };
  });
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
        past: (chosen && past.get(chosen.id)) ?? null,
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
