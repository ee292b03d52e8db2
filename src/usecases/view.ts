import type { Audit } from "../store/audit.ts";
import type { Read } from "../store/store.ts";
import { type Act, recording } from "./act.ts";

/**
 * Answers from one snapshot what speaks of patients, once it is written down that it was seen: `work` names the view by
 * `seen`. Nothing is answered whose entry in the audit trail is not stored. The snapshot is over by then, so that a long
 * look does not delay writing.
 */
export async function view<T>(act: Act, work: (read: Read, seen: (view: Audit) => void) => Promise<T>): Promise<T> {
  let viewed: Audit | null = null;
  const answer = await act.store.read((read) =>
    work(read, (view) => {
      viewed = view;
    }),
  );
  if (viewed === null) throw new Error("a view of patients has no entry for the audit trail");
  await act.store.noteView(recording(act), viewed);
  return answer;
}
