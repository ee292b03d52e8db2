import type { ReactNode } from "react";
import { roundText } from "../texts/round.ts";
import { goTo } from "./address.ts";
import { useSession } from "./session.tsx";

/** Goes to the same page of another ward; `id` is the control's own. */
export function WardSelect(props: { id: string; wardId: number; addressOf: (wardId: string) => string }): ReactNode {
  const { id, wardId, addressOf } = props;
  const { wards } = useSession();
  return (
    <div>
      <label htmlFor={id}>{roundText("ward")}</label>{" "}
      <select id={id} value={wardId} onChange={(event) => goTo(addressOf(event.target.value))}>
        {wards.map((ward) => (
          <option key={ward.wardId} value={ward.wardId}>
            {ward.code === ward.name ? ward.code : `${ward.code} ${ward.name}`}
          </option>
        ))}
      </select>
    </div>
  );
}
