import type { ReactNode } from "react";
import { month } from "../../../../shared/day.ts";
import type { SignedChanges } from "../../../../shared/signed-changes.ts";
import { DraftNotice } from "../../parts/draft-notice.tsx";
import { SignedChange } from "../../parts/form/signed-change.tsx";
import { OpensOnce } from "../../parts/opens-once.tsx";
import { styleText } from "../../texts/style.ts";

const figure = { wardId: 1, ward: "3E" } as const;

/** Invented: a removal that is a day earlier than the month was signed with. */
const changes: SignedChanges = {
  acknowledge: "",
  months: [
    {
      ...{
        month: month.parse("2026-10"),
        signedAt: "2026-11-03T15:00:00.000Z",
        signedBy: "Ash Moreno",
        hasOthers: true,
      },
      figures: [
        { ...figure, figure: "catheter_days", what: "Catheter-days", before: 2, after: 1 },
        { ...figure, figure: "utilization", what: "Device utilization ratio", before: 0.67, after: 0.33 },
      ],
    },
  ],
};

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
      <h3>{styleText("signedChange")}</h3>
      <OpensOnce summary={styleText("signedChangeShow")}>
        <SignedChange changes={changes} decide={() => undefined} />
      </OpensOnce>
    </section>
  );
}
