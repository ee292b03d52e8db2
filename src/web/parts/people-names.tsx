import type { ReactNode } from "react";
import { listPeople } from "../../../shared/api/people.ts";
import { shellText } from "../texts/shell.ts";
import { ShowAnswer } from "./show-answer.tsx";
import { useAnswer } from "./use-answer.ts";

/** The name of a person by their number, also of one who has left. */
export type NameOf = (personId: number) => string;

/** Loads who the people here are, then shows what names them. `what` completes "Loading …". */
export function WithNames({ what, children }: { what: string; children: (nameOf: NameOf) => ReactNode }): ReactNode {
  const asked = useAnswer(listPeople, {});
  return (
    <ShowAnswer asked={asked} what={what}>
      {({ people }) => {
        const names = new Map(people.map(({ personId, name }) => [personId, name]));
        return children((personId) => names.get(personId) ?? shellText("somebody", { id: personId }));
      }}
    </ShowAnswer>
  );
}
