import type { Act } from "../../usecases/act.ts";
import { determineByNow } from "../../usecases/cultures/determine-by-now.ts";
import type { HeavyRead, HeavyWork } from "./heavy-work.ts";

/** Time may change determinations while they are read; not as often as this. */
const mostTries = 4;

/**
 * Asks a heavy read, and stores what it saw before it answers. What time alone has changed is determined here first: the
 * thread that writes is this one.
 */
export async function askHeavy(
  act: Act,
  heavy: HeavyWork,
  asked: Omit<HeavyRead, "actor" | "now">,
): Promise<string | object> {
  for (let tries = 0; tries < mostTries; tries++) {
    const found = await heavy.read({ ...asked, actor: act.actor, now: act.now });
    if (found === null) {
      await determineByNow(act);
      continue;
    }
    for (const { by, ...view } of found.views) await act.store.noteView(by, view);
    return found.answer;
  }
  throw new Error(`${asked.name} has to write, and a heavy read cannot`);
}
