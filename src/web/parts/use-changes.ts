import { useEffect } from "react";
import { listChanges } from "../../../shared/api/audit.ts";
import { ask } from "./server.ts";
import { useSession } from "./session.tsx";

/** How often the server is asked what changed. Only then is a page read anew, because each reading is recorded. */
const everyMs = 20_000;

/** Calls `onChange` when records within the person's reach were changed, here or elsewhere, while the page is in front. */
export function useChanges(onChange: () => void): void {
  const maySee = useSession().may("see-changes");
  useEffect(() => {
    if (!maySee) return;
    let cursor: number | null = null;
    const stopping = new AbortController();
    const look = async (): Promise<void> => {
      if (document.visibilityState === "hidden") return;
      const input = cursor === null ? {} : { after: cursor };
      const reply = await ask(listChanges, input, { signal: stopping.signal });
      if (stopping.signal.aborted || reply.state !== "answered") return;
      if (reply.value.changes.length > 0) onChange();
      cursor = reply.value.next;
    };
    void look();
    const timer = setInterval(() => void look(), everyMs);
    const onShow = (): void => void look();
    document.addEventListener("visibilitychange", onShow);
    return () => {
      stopping.abort();
      clearInterval(timer);
      document.removeEventListener("visibilitychange", onShow);
    };
  }, [maySee, onChange]);
}
