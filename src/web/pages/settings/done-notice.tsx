import type { ReactNode } from "react";

/** Says what was set; nothing yet when null. */
export function DoneNotice({ words }: { words: string | null }): ReactNode {
  return <div role="status">{words !== null && <p className="notice done">{words}</p>}</div>;
}
