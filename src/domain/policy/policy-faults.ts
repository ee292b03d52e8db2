import type { PolicyBody } from "../../../shared/policy.ts";
import type { Fault } from "../../../shared/problems.ts";

/** What contradicts itself in a policy: an item listed twice, or a threshold for an indication that is not accepted. */
export function policyFaults({ indications, bundle, requiredFields, thresholdByIndication }: PolicyBody): Fault[] {
  const accepted = indications.map(({ code }) => code);
  const faults: Fault[] = [
    ...repeated("/indications", accepted),
    ...repeated(
      "/bundle",
      bundle.map(({ code }) => code),
    ),
    ...repeated("/requiredFields", requiredFields),
  ];
  for (const code of Object.keys(thresholdByIndication))
    if (!accepted.includes(code))
      faults.push({
        code: "policy-contradicts",
        pointer: `/body/thresholdByIndication/${code}`,
        detail: "There is a threshold for an indication that is not accepted.",
      });
  return faults;
}

function repeated(pointer: string, list: readonly string[]): Fault[] {
  return list.flatMap((item, i) =>
    list.indexOf(item) === i
      ? []
      : [{ code: "policy-contradicts", pointer: `/body${pointer}/${i}`, detail: "This is listed twice." }],
  );
}
