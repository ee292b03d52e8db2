import { chooseLaboratoryWords } from "../../../../shared/api/laboratory-words.ts";
import { useRecording } from "../../parts/use-recording.ts";
import { keptWords, type SpecimenDraft } from "./specimen-draft.ts";

/** Keeps the groups of a specimen that are to hold for each one with the same wording. Gives false when they were refused. */
export function useKeptWords(): (draft: SpecimenDraft) => Promise<boolean> {
  const { send } = useRecording(chooseLaboratoryWords);
  return async (draft) => {
    const words = keptWords(draft);
    return words.length === 0 || (await send({ words })).state === "answered";
  };
}
