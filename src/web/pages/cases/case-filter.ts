import type { listCases } from "../../../../shared/api/cases.ts";
import { type CaseList, caseList } from "../../../../shared/case-words.ts";
import type { OutputOf } from "../../../../shared/endpoint.ts";

export type Cases = OutputOf<typeof listCases>;
export type CaseInList = Cases["cases"][number];

/** What of the list is shown; it stands in the address, so that it can be kept and sent. */
export interface CaseFilter {
  readonly list: CaseList;
  readonly wardId: number | null;
  readonly changedOnly: boolean;
}

/** The filter that an address asks for; what cannot be read is left out. */
export function filterOf(question: URLSearchParams): CaseFilter {
  const list = caseList.safeParse(question.get("list"));
  const ward = question.get("ward") ?? "";
  return {
    list: list.success ? list.data : "waiting",
    wardId: /^[1-9]\d{0,9}$/.test(ward) ? Number(ward) : null,
    changedOnly: question.get("changed") === "yes",
  };
}

/** The address of a filter. */
export function addressOfFilter({ list, wardId, changedOnly }: CaseFilter): string {
  const question = new URLSearchParams({
    ...(list === "waiting" ? {} : { list }),
    ...(wardId === null ? {} : { ward: String(wardId) }),
    ...(changedOnly ? { changed: "yes" } : {}),
  }).toString();
  return question === "" ? "/cases" : `/cases?${question}`;
}

/** The cases that a filter leaves. */
export function filtered(cases: readonly CaseInList[], { wardId, changedOnly }: CaseFilter): CaseInList[] {
  return cases.filter((one) => (wardId === null || one.wardId === wardId) && (!changedOnly || one.state === "changed"));
}
