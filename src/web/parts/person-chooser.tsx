import type { ReactNode } from "react";
import { listPeople } from "../../../shared/api/people.ts";
import { shellText } from "../texts/shell.ts";
import { roleText } from "../texts/words.ts";
import { playPerson } from "./played-person.ts";
import type { Session } from "./session.tsx";
import { useAnswer } from "./use-answer.ts";

/** In the demo: chooses whom to act as. The page is loaded anew, because another person sees other things. */
export function PersonChooser({ me }: { me: Session["me"] }): ReactNode {
  const asked = useAnswer(listPeople, {});
  const people = asked.state === "answered" ? asked.value.people.filter(({ active }) => active) : [me];
  const choose = (personId: number): void => {
    playPerson(personId);
    location.assign("/");
  };
  return (
    <div className="who">
      <label htmlFor="who">{shellText("playAs")}</label>
      <select id="who" value={me.personId} onChange={(event) => choose(Number(event.target.value))}>
        {people.map(({ personId, name, roles }) => (
          <option key={personId} value={personId}>
            {shellText("roleOf", { name, role: roles.map((role) => roleText(role)).join(", ") })}
          </option>
        ))}
      </select>
    </div>
  );
}
