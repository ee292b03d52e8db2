import type { ReactNode } from "react";
import type { NameOf } from "../../parts/people-names.tsx";
import { Said } from "../../parts/said.tsx";
import { useSession } from "../../parts/session.tsx";
import { settingsText } from "../../texts/settings.ts";
import { wardText } from "../../texts/ward-settings.ts";
import { settingText } from "../../texts/words.ts";
import type { WardTold } from "./ward-page.tsx";

/** The first day that a ward without a beginning is said of. */
const always = "1970-01-01";

const columns = ["from", "name", "type", "setting", "beds", "by", "when", "why"] as const;

/** What a ward is and was, each from a day on, with who said so and why. */
export function WardHistory({ ward, nameOf }: { ward: WardTold; nameOf: NameOf }): ReactNode {
  return (
    <section aria-labelledby="history">
      <h2 id="history">{wardText("history")}</h2>
      <dl className="facts">
        <dt>{wardText("opened")}</dt>
        <dd>{ward.openedDay ?? settingsText("always")}</dd>
        {ward.closedDay !== null && (
          <>
            <dt>{wardText("closed")}</dt>
            <dd>{ward.closedDay}</dd>
          </>
        )}
      </dl>
      <div className="wide">
        <table className="ledger">
          <thead>
            <tr>
              {columns.map((name) => (
                <th scope="col" key={name}>
                  {wardText(name)}
                </th>
              ))}
            </tr>
          </thead>
          <tbody>
            {ward.settings.map((setting) => (
              <Row key={setting.fromDay} {...{ setting, nameOf }} />
            ))}
          </tbody>
        </table>
      </div>
    </section>
  );
}

function Row({ setting: said, nameOf }: { setting: WardTold["settings"][number]; nameOf: NameOf }): ReactNode {
  const { time } = useSession();
  const { fromDay, name, type, setting, beds, byHand, reason, recordedAt, recordedBy } = said;
  return (
    <tr>
      <th scope="row">{fromDay === always ? settingsText("always") : fromDay}</th>
      <td>
        <Said>{name}</Said>
      </td>
      <td>
        <Said>{type ?? ""}</Said>
      </td>
      <td>{setting === null ? wardText("noSetting") : settingText(setting)}</td>
      <td>{beds}</td>
      <td>
        <Said>{nameOf(recordedBy)}</Said>
        {!byHand && ` (${wardText("byFile")})`}
      </td>
      <td>
        <Said>{`${time.dayOf(recordedAt)} ${time.clock(recordedAt)}`}</Said>
      </td>
      <td>
        <Said>{reason ?? ""}</Said>
      </td>
    </tr>
  );
}
