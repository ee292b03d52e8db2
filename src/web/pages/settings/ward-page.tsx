import { type ReactNode, useState } from "react";
import { readWardHistory } from "../../../../shared/api/wards.ts";
import type { OutputOf } from "../../../../shared/endpoint.ts";
import { PageLink } from "../../parts/page-link.tsx";
import { WithNames } from "../../parts/people-names.tsx";
import { useSession } from "../../parts/session.tsx";
import { ShowAnswer } from "../../parts/show-answer.tsx";
import { useAnswer } from "../../parts/use-answer.ts";
import type { PageProps } from "../../routes.ts";
import { wardText } from "../../texts/ward-settings.ts";
import { CloseWard, ReopenWard } from "./close-ward.tsx";
import { DescribeWard } from "./describe-ward.tsx";
import { DoneNotice } from "./done-notice.tsx";
import { MergedWards, MergeWard } from "./merge-ward.tsx";
import { SettingsFrame } from "./settings-frame.tsx";
import { WardHistory } from "./ward-history.tsx";

export type WardTold = OutputOf<typeof readWardHistory>;

/** One ward: what it is and was with who said so, and its changes for whom they are. */
export function WardPage({ found }: PageProps): ReactNode {
  const { wardCode } = useSession();
  const wardId = Number(found.wardId);
  const asked = useAnswer(readWardHistory, { wardId });
  return (
    <SettingsFrame title={wardText("wardTitle", { ward: wardCode(wardId) })}>
      <p className="on-screen">
        <PageLink to="/settings/wards">{wardText("all")}</PageLink>
      </p>
      <ShowAnswer asked={asked} what={wardText("what")}>
        {(ward) => <Shown key={wardId} ward={ward} again={asked.again} />}
      </ShowAnswer>
    </SettingsFrame>
  );
}

function Shown({ ward, again }: { ward: WardTold; again: () => void }): ReactNode {
  const { may, renew } = useSession();
  const [said, setSaid] = useState<{ readonly count: number; readonly words: string | null }>({
    ...{ count: 0, words: null },
  });
  const done = (words: string): void => {
    setSaid(({ count }) => ({ count: count + 1, words }));
    again();
    renew();
  };
  return (
    <>
      <DoneNotice words={said.words} />
      {ward.namedOnly && <p className="notice">{wardText("namedOnly")}</p>}
      <WithNames what={wardText("what")}>
        {(nameOf) => (
          <>
            <WardHistory {...{ ward, nameOf }} />
            <MergedWards {...{ ward, nameOf }} />
          </>
        )}
      </WithNames>
      {may("set-wards") && (
        <div key={`${said.count} ${ward.settings.length} ${ward.closedDay}`} className="on-screen">
          <DescribeWard {...{ ward, done }} />
          {ward.closedDay === null ? <CloseWard {...{ ward, done }} /> : <ReopenWard {...{ ward, done }} />}
          <MergeWard ward={ward} />
        </div>
      )}
    </>
  );
}
