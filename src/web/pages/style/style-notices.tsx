import type { ReactNode } from "react";
import { DraftNotice } from "../../parts/draft-notice.tsx";
import { styleText } from "../../texts/style.ts";

const kinds = [
  ["notice", "notice"],
  ["notice fault", "fault"],
  ["notice done", "done"],
  ["notice hint", "hint"],
] as const;

/** Every kind of notice. */
export function StyleNotices(): ReactNode {
  return (
    <section aria-labelledby="notices">
      <h2 id="notices">{styleText("notices")}</h2>
      {kinds.map(([className, name]) => (
        <div key={name} className={className}>
          <p>
            <strong>{styleText(name)}.</strong> {styleText("noticeDetail")}
          </p>
        </div>
      ))}
      <h3>{styleText("draft")}</h3>
      <DraftNotice drop={() => undefined} />
    </section>
  );
}
