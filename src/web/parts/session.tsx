import { createContext, type ReactNode, use, useCallback, useMemo } from "react";
import { readFacility } from "../../../shared/api/facility.ts";
import { readMe } from "../../../shared/api/people.ts";
import { listWards } from "../../../shared/api/wards.ts";
import { listDestinations } from "../../../shared/api/wards-now.ts";
import type { OutputOf } from "../../../shared/endpoint.ts";
import type { Permission } from "../../../shared/permissions.ts";
import { shellText } from "../texts/shell.ts";
import { type FacilityTime, facilityTime } from "./facility-time.ts";
import { ShowAnswer } from "./show-answer.tsx";
import { useAnswer } from "./use-answer.ts";

export type Ward = OutputOf<typeof listWards>["wards"][number];

/** Who sits here, where, and which wards they see; the same for every page of a visit. */
export interface Session {
  readonly me: OutputOf<typeof readMe>;
  readonly facility: OutputOf<typeof readFacility>;
  readonly wards: readonly Ward[];
  /** Times on the facility's clocks. */
  readonly time: FacilityTime;
  /** The present instant by the server's clock, which this device's may not agree with. */
  now(): number;
  may(permission: Permission): boolean;
  /** The code of a ward, or its number when the person does not see the ward. */
  wardCode(wardId: number): string;
  /** Reads who, where and which wards anew, after one of them was changed here. */
  renew(): void;
}

const context = createContext<Session | null>(null);

/** The session that every page stands in. */
export function useSession(): Session {
  const session = use(context);
  if (session === null) throw new Error("The page stands outside of the session");
  return session;
}

/** Loads the session, then shows what stands in it. `around` stands around what is said until then. */
export function WithSession(props: {
  around: (content: ReactNode) => ReactNode;
  children: (session: Session) => ReactNode;
}): ReactNode {
  const { around, children } = props;
  const me = useAnswer(readMe, {});
  const facility = useAnswer(readFacility, {});
  const wards = useAnswer(listWards, {});
  const again = useCallback(() => {
    for (const ask of [me.again, facility.again, wards.again]) ask();
  }, [me.again, facility.again, wards.again]);
  if (me.state === "answered" && facility.state === "answered" && wards.state === "answered") {
    const values = { me: me.value, facility: facility.value, wards: wards.value.wards };
    return (
      <Provided {...values} renew={again}>
        {children}
      </Provided>
    );
  }
  const unsettled = [me, facility, wards].find(({ state }) => state !== "answered" && state !== "waiting") ?? me;
  return around(
    <ShowAnswer<unknown> asked={{ ...unsettled, again }} what={shellText("session")}>
      {() => <p role="status">{shellText("loading", { what: shellText("session") })}</p>}
    </ShowAnswer>,
  );
}

function Provided(props: {
  me: Session["me"];
  facility: Session["facility"];
  wards: readonly Ward[];
  renew: () => void;
  children: (session: Session) => ReactNode;
}): ReactNode {
  const { me, facility, wards, renew, children } = props;
  const session = useMemo<Session>(() => {
    const aheadMs = Date.parse(facility.now) - Date.now();
    return {
      ...{ me, facility, wards },
      time: facilityTime(facility.zone),
      now: () => Date.now() + aheadMs,
      may: (permission) => me.permissions.includes(permission),
      wardCode: (wardId) => wards.find((ward) => ward.wardId === wardId)?.code ?? `#${wardId}`,
      renew,
    };
  }, [me, facility, wards, renew]);
  return <context.Provider value={session}>{children(session)}</context.Provider>;
}

/**
 * Names wards by their codes that the person does not see otherwise: a patient of theirs may have been moved there. Asks
 * for the names only where one is missing.
 */
export function WithWardNames(props: { wardIds: readonly (number | null)[]; children: ReactNode }): ReactNode {
  const { wards, may } = useSession();
  const known = new Set<number | null>([null, ...wards.map(({ wardId }) => wardId)]);
  const isNamed = !may("record-care") || props.wardIds.every((wardId) => known.has(wardId));
  return isNamed ? props.children : <Destinations>{props.children}</Destinations>;
}

function Destinations({ children }: { children: ReactNode }): ReactNode {
  const session = useSession();
  const asked = useAnswer(listDestinations, {});
  const found = asked.state === "answered" ? asked.value.wards : null;
  const named = useMemo<Session>(() => {
    const codes = new Map(found?.map(({ wardId, code }) => [wardId, code]));
    return { ...session, wardCode: (wardId) => codes.get(wardId) ?? session.wardCode(wardId) };
  }, [session, found]);
  return <context.Provider value={named}>{children}</context.Provider>;
}
