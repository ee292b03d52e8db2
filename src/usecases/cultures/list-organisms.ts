import type { listOrganisms as endpoint } from "../../../shared/api/organisms.ts";
import type { OutputOf } from "../../../shared/endpoint.ts";
import { listedOrganisms, otherKnownNames } from "../../domain/criteria/index.ts";

/** The organisms whose names are known, by name, and the other names that are read as they are. */
export async function listOrganisms(): Promise<OutputOf<typeof endpoint>> {
  const organisms = listedOrganisms().map(({ key, group, isCommensal = false }) => ({ name: key, group, isCommensal }));
  return { organisms, otherNames: otherKnownNames() };
}
