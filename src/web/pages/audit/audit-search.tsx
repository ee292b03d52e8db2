import { type FormEvent, type ReactNode, useState } from "react";
import type { searchAudit } from "../../../../shared/api/audit.ts";
import type { listPeople } from "../../../../shared/api/people.ts";
import { auditAction } from "../../../../shared/audit-words.ts";
import { day as dayText } from "../../../../shared/day.ts";
import type { InputOf, OutputOf } from "../../../../shared/endpoint.ts";
import { SelectField } from "../../parts/form/choice-field.tsx";
import { TextField } from "../../parts/form/text-field.tsx";
import { actionText, auditText } from "../../texts/audit.ts";

/** Asks for entries by person, action and days. */
export function AuditSearch(props: {
  people: OutputOf<typeof listPeople>["people"];
  search: (question: InputOf<typeof searchAudit>) => void;
}): ReactNode {
  const { people, search } = props;
  const [personId, setPersonId] = useState<string | null>(null);
  const [action, setAction] = useState<(typeof auditAction.options)[number] | null>(null);
  const [from, setFrom] = useState("");
  const [to, setTo] = useState("");
  const submit = (event: FormEvent): void => {
    event.preventDefault();
    const [first, last] = [dayText.safeParse(from), dayText.safeParse(to)];
    search({
      ...(personId === null ? {} : { personId: Number(personId) }),
      ...(action === null ? {} : { action }),
      ...(first.success ? { from: first.data } : {}),
      ...(last.success ? { to: last.data } : {}),
    });
  };
  const none = { faults: [] };
  return (
    <form onSubmit={submit} className="on-screen beside">
      <SelectField
        {...none}
        pointer="/personId"
        label={auditText("person")}
        choices={people.map((person) => ({ value: String(person.personId), label: person.name }))}
        value={personId}
        change={setPersonId}
        empty={auditText("anybody")}
      />
      <SelectField
        {...none}
        pointer="/action"
        label={auditText("action")}
        choices={auditAction.options.map((one) => ({ value: one, label: actionText(one) }))}
        value={action}
        change={setAction}
        empty={auditText("anything")}
      />
      <TextField {...none} pointer="/from" label={auditText("from")} type="date" value={from} change={setFrom} />
      <TextField {...none} pointer="/to" label={auditText("to")} type="date" value={to} change={setTo} />
      <p>
        <button type="submit" className="first">
          {auditText("search")}
        </button>
      </p>
    </form>
  );
}
