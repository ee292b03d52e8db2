import { rebuildDeterminations, verifyDeterminations } from "../usecases/jobs/check-determinations.ts";
import { verifyOrRebuild } from "./verify-or-rebuild.ts";

/** How the command is called. */
export const determinationsUsage = "npm run determinations -- verify | rebuild";

/** Compares what cultures were determined to be with the record, and on `rebuild` determines anew what differs. */
export const determinations = verifyOrRebuild({
  empty: "There is no facility yet, so nothing was determined.",
  run: async (action, act, tell) => {
    const check = action === "verify" ? verifyDeterminations : rebuildDeterminations;
    const { patients, cases, differences } = await check(act);
    for (const { caseId, kept, determined } of differences)
      await tell(`case ${caseId}: kept is ${kept ?? "nothing"}, the record says ${determined ?? "nothing"}`);
    return { looked: `${cases} cultures of ${patients} patients`, differences: differences.length };
  },
});
