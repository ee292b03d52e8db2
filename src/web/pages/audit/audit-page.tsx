import { type ReactNode, useState } from "react";
import { readAccess, searchAudit } from "../../../../shared/api/audit.ts";
import { listPeople } from "../../../../shared/api/people.ts";
import type { InputOf } from "../../../../shared/endpoint.ts";
import { Page } from "../../parts/page.tsx";
import { ShowAnswer } from "../../parts/show-answer.tsx";
import { useAnswer } from "../../parts/use-answer.ts";
import type { PageProps } from "../../routes.ts";
import { auditText } from "../../texts/audit.ts";
import { AuditSearch } from "./audit-search.tsx";
import { AuditTable } from "./audit-table.tsx";
import { ChainCheck } from "./chain-check.tsx";

/** The audit trail: of one patient when the address names one by its number here, else a search. */
export function AuditPage({ question }: PageProps): ReactNode {
  const patientId = Number(question.get("patient"));
  if (patientId > 0) {
    return (
      <Page title={auditText("ofPatient")}>
        <p>{auditText("lead")}</p>
        <AccessOf key={patientId} patientId={patientId} />
      </Page>
    );
  }
  return (
    <Page title={auditText("title")}>
      <p>{auditText("lead")}</p>
      <Search />
      <ChainCheck />
    </Page>
  );
}

function AccessOf({ patientId }: { patientId: number }): ReactNode {
  const [after, setAfter] = useState<string | null>(null);
  const asked = useAnswer(readAccess, { patientId, ...(after === null ? {} : { after }) });
  return (
    <ShowAnswer asked={asked} what={auditText("what")}>
      {(page) => <AuditTable page={page} older={setAfter} />}
    </ShowAnswer>
  );
}

type Question = Omit<InputOf<typeof searchAudit>, "after">;

/** Nothing is looked for until somebody asks: every search is recorded. */
function Search(): ReactNode {
  const people = useAnswer(listPeople, {});
  const [asked, setAsked] = useState<Question | null>(null);
  return (
    <>
      <ShowAnswer asked={people} what={auditText("what")}>
        {(known) => <AuditSearch people={known.people} search={setAsked} />}
      </ShowAnswer>
      {asked && <Found key={JSON.stringify(asked)} question={asked} />}
    </>
  );
}

function Found({ question }: { question: Question }): ReactNode {
  const [after, setAfter] = useState<string | null>(null);
  const asked = useAnswer(searchAudit, { ...question, ...(after === null ? {} : { after }) });
  return (
    <ShowAnswer asked={asked} what={auditText("what")}>
      {(page) => <AuditTable page={page} older={setAfter} />}
    </ShowAnswer>
  );
}
