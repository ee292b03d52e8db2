import { z } from "zod";

/** What a row of a round can say, in the order of what needs doing first. */
export const roundState = z.enum([
  "overdue",
  "missed",
  "past-threshold",
  "doubtful",
  "removal-decided",
  "asked",
  "due",
  "indication-missing",
  "indication-outside",
  "late",
  "done",
]);
export type RoundState = z.infer<typeof roundState>;
