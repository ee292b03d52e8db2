import type { listCases } from "../../../../shared/api/cases.ts";
import { type CaseList, caseList } from "../../../../shared/case-words.ts";
import { type Month, month as monthText } from "../../../../shared/day.ts";
import type { OutputOf } from "../../../../shared/endpoint.ts";

export type Cases = OutputOf<typeof listCases>;
export type CaseInList = Cases["cases"][number];

/** What of the list is shown; it is in the address, so that it can be kept and sent. */
export interface CaseFilter {
  readonly list: CaseList;
  readonly wardId: number | null;
  /** null: any month. */
  readonly month: string | null;
  readonly changedOnly: boolean;
  /** Only cultures of which another reading of an open point gives another answer. */
  readonly hinging: boolean;
  /** Only cultures that rest on temperatures of fewer than half of the days. */
  readonly fewTemperatures: boolean;
}

/** Nothing is left out of the cultures to review. */
export const allCases: CaseFilter = {
  ...{ list: "waiting", wardId: null, month: null },
  ...{ changedOnly: false, hinging: false, fewTemperatures: false },
};

/** The filter that an address asks for; what cannot be read is left out. */
export function filterOf(question: URLSearchParams): CaseFilter {
  const list = caseList.safeParse(question.get("list"));
  const ward = question.get("ward") ?? "";
  return {
    list: list.success ? list.data : "waiting",
    wardId: /^[1-9]\d{0,9}$/.test(ward) ? Number(ward) : null,
    month: monthIn(question.get("month")),
    changedOnly: question.get("changed") === "yes",
    hinging: question.get("hinging") === "yes",
    fewTemperatures: question.get("few-temperatures") === "yes",
  };
}

/** A month of an address; null where it names none. */
export function monthIn(text: string | null): Month | null {
  const read = monthText.safeParse(text);
  return read.success ? read.data : null;
}

/** The address of a filter. */
export function addressOfFilter({ list, wardId, month, changedOnly, hinging, fewTemperatures }: CaseFilter): string {
  const question = new URLSearchParams({
    ...(list === "waiting" ? {} : { list }),
    ...(wardId === null ? {} : { ward: String(wardId) }),
    ...(month === null ? {} : { month }),
    ...(changedOnly ? { changed: "yes" } : {}),
    ...(hinging ? { hinging: "yes" } : {}),
    ...(fewTemperatures ? { "few-temperatures": "yes" } : {}),
  }).toString();
  return question === "" ? "/cases" : `/cases?${question}`;
}

/** The cases that a filter leaves. */
export function filtered(cases: readonly CaseInList[], filter: CaseFilter): CaseInList[] {
  const { wardId, changedOnly, hinging, fewTemperatures } = filter;
  return cases.filter(
    (one) =>
      (wardId === null || one.wardId === wardId) &&
      (!changedOnly || one.state === "changed") &&
      (!hinging || one.hinges.length > 0) &&
      (!fewTemperatures || one.hasFewTemperatures),
  );
}
