import { z } from "zod";
import { words } from "./vocabulary.ts";

/** What a row of a round can say, in the order of what needs doing first, each with the word that a person reads. */
export const roundStateWords = {
  overdue: "Review overdue",
  missed: "Review missed",
  "past-threshold": "Past threshold",
  doubtful: "Not confirmed",
  "removal-decided": "Removal decided",
  asked: "Provider contacted",
  due: "Review due",
  "indication-missing": "No indication",
  "indication-outside": "Indication outside policy",
  late: "Reviewed late",
  done: "Reviewed",
} as const;
export const roundState = z.enum(words(roundStateWords));
export type RoundState = z.infer<typeof roundState>;
