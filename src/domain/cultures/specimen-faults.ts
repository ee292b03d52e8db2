import type { Fault } from "../../../shared/problems.ts";
import { matchOrganism } from "../criteria/index.ts";
import type { RecordedOrganism, RecordedSpecimen } from "./specimen.ts";

/** More than any laboratory reports of one specimen; three are already too many to be used. Common practice. */
const mostOrganisms = 12;

/**
 * What contradicts itself in a specimen's result: `result-contradicts` for organisms of a report that is still pending,
 * `organism-group-contradicts` for a group other than that of the list, `too-many-organisms`.
 */
export function resultFaults({ status, organisms }: Pick<RecordedSpecimen, "status" | "organisms">): Fault[] {
  const faults = organisms.flatMap(groupFaults);
  if (organisms.length > mostOrganisms) {
    const detail = `A specimen has at most ${mostOrganisms} organisms here.`;
    faults.unshift({ code: "too-many-organisms", pointer: "/organisms", detail });
  }
  if (status === "pending" && organisms.length > 0) {
    const detail = "A report that is pending has named no organism yet.";
    faults.unshift({ code: "result-contradicts", pointer: "/status", detail });
  }
  return faults;
}

/** `organism-missing` for a final report that a person records without saying that nothing grew. */
export function growthFaults({ status, organisms }: Pick<RecordedSpecimen, "status" | "organisms">): Fault[] {
  if (organisms.length > 0 || (status !== "final" && status !== "corrected")) return [];
  const detail = "A final report without an organism is not taken for no growth.";
  return [{ code: "organism-missing", pointer: "/organisms", detail }];
}

function groupFaults({ name, group }: RecordedOrganism, i: number): Fault[] {
  const known = group === null ? null : matchOrganism(name);
  if (known === null || known.group === group) return [];
  const detail = "The list of organisms has this name in another group.";
  return [{ code: "organism-group-contradicts", pointer: `/organisms/${i}/group`, detail }];
}
