import { type ReactNode, useState } from "react";
import { listScope } from "../../../../shared/api/scope.ts";
import type { OutputOf } from "../../../../shared/endpoint.ts";
import { type NameOf, WithNames } from "../../parts/people-names.tsx";
import { Said } from "../../parts/said.tsx";
import { useSession } from "../../parts/session.tsx";
import { ShowAnswer } from "../../parts/show-answer.tsx";
import { useAnswer } from "../../parts/use-answer.ts";
import { scopeText } from "../../texts/settings.ts";
import { ChangeWatch } from "./change-watch.tsx";
import { DoneNotice } from "./done-notice.tsx";
import { SettingsFrame } from "./settings-frame.tsx";
import { WatchWard } from "./watch-ward.tsx";

type Scopes = OutputOf<typeof listScope>["scopes"];

/** Which wards are watched, and another one for whom it is. */
export function ScopePage(): ReactNode {
  const { may } = useSession();
  const asked = useAnswer(listScope, {});
  const [said, setSaid] = useState<{ readonly words: string; readonly times: number } | null>(null);
  const done = (words: string): void => {
    setSaid((before) => ({ words, times: (before?.times ?? 0) + 1 }));
    asked.again();
  };
  return (
    <SettingsFrame title={scopeText("title")}>
      <p>{scopeText("lead")}</p>
      <DoneNotice words={said?.words ?? null} />
      <h2>{scopeText("list")}</h2>
      <ShowAnswer asked={asked} what={scopeText("what")}>
        {({ scopes }) => (
          <>
            <WithNames what={scopeText("what")}>
              {(nameOf) => <Watched {...{ scopes, nameOf }} done={() => done(scopeText("changed"))} />}
            </WithNames>
            {may("set-wards") && (
              <section aria-labelledby="watch" className="on-screen">
                <h2 id="watch">{scopeText("form")}</h2>
                <WatchWard
                  key={said?.times ?? 0}
                  edition={scopes.findLast(({ isHeld }) => isHeld)?.edition ?? "us-2024"}
                  done={() => done(scopeText("done"))}
                />
              </section>
            )}
          </>
        )}
      </ShowAnswer>
    </SettingsFrame>
  );
}

const columns = ["ward", "from", "to", "edition", "by", "when"] as const;

function Watched(props: { scopes: Scopes; nameOf: NameOf; done: () => void }): ReactNode {
  const { scopes, nameOf, done } = props;
  const { wardCode, time, may } = useSession();
  if (scopes.length === 0) return <p className="notice">{scopeText("none")}</p>;
  return (
    <div className="wide">
      <table className="ledger">
        <thead>
          <tr>
            {columns.map((name) => (
              <th scope="col" key={name}>
                {scopeText(name)}
              </th>
            ))}
          </tr>
        </thead>
        <tbody>
          {scopes.map((scope) => (
            <tr key={`${scope.scopeId} ${scope.version}`}>
              <th scope="row">
                <Said>{wardCode(scope.wardId)}</Said>
              </th>
              <td>{scope.fromMonth}</td>
              <td>
                {scope.toMonth ?? scopeText("open")}
                {may("set-wards") && <ChangeWatch scope={scope} done={done} />}
              </td>
              <td>
                <Said>{scope.edition}</Said>
              </td>
              <td>
                <Said>{nameOf(scope.recordedBy)}</Said>
              </td>
              <td>
                <Said>{`${time.dayOf(scope.recordedAt)} ${time.clock(scope.recordedAt)}`}</Said>
              </td>
            </tr>
          ))}
        </tbody>
      </table>
    </div>
  );
}
