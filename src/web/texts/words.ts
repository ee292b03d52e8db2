import { noteKinds, reviewOutcomes } from "../../../shared/catheter-words.ts";
import { roundStateWords } from "../../../shared/round-states.ts";
import { catheterKinds, type roles, wardSettings } from "../../../shared/vocabulary.ts";
import { catalogue } from "./catalogue.ts";

/** The words of the closed lists that the contract has: one spelling for server and page. */
export const kindText = catalogue("catheterKinds", catheterKinds);
export const roleText = catalogue("roles", {
  ...{ bedside: "Bedside", prevention: "Infection prevention", manager: "Manager" },
  ...{ administrator: "Administrator", feed: "Feed" },
} satisfies Record<keyof typeof roles, string>);
export const settingText = catalogue("wardSettings", wardSettings);
export const outcomeText = catalogue("reviewOutcomes", reviewOutcomes);
export const noteKindText = catalogue("noteKinds", noteKinds);
export const stateText = catalogue("roundStates", roundStateWords);
