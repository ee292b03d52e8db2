import type { ReactNode } from "react";
import { PageLink } from "../../parts/page-link.tsx";
import { Said } from "../../parts/said.tsx";
import { useSession } from "../../parts/session.tsx";
import { Term } from "../../parts/term.tsx";
import { wardText } from "../../texts/ward-settings.ts";
import { settingText } from "../../texts/words.ts";

/** The wards as they are today, each leading to what it was. */
export function WardTable(): ReactNode {
  const { wards } = useSession();
  return (
    <div className="wide">
      <table className="ledger">
        <thead>
          <tr>
            <th scope="col">{wardText("ward")}</th>
            <th scope="col">{wardText("type")}</th>
            <th scope="col">
              <Term name="setting">{wardText("setting")}</Term>
            </th>
            <th scope="col">{wardText("beds")}</th>
            <th scope="col">{wardText("opened")}</th>
            <th scope="col">{wardText("closed")}</th>
          </tr>
        </thead>
        <tbody>
          {wards.map(({ wardId, code, name, type, setting, beds, openedDay, closedDay }) => (
            <tr key={wardId}>
              <th scope="row">
                <PageLink to={`/settings/wards/${wardId}`}>
                  <Said>{code === name ? code : `${code} ${name}`}</Said>
                </PageLink>
              </th>
              <td>
                <Said>{type ?? ""}</Said>
              </td>
              <td>{setting === null ? wardText("noSetting") : settingText(setting)}</td>
              <td>{beds}</td>
              <td>{openedDay}</td>
              <td>{closedDay}</td>
            </tr>
          ))}
        </tbody>
      </table>
    </div>
  );
}
