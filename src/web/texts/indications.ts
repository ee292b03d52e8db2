import { indications } from "../../../shared/catheter-words.ts";
import type { PolicyBody } from "../../../shared/policy.ts";
import { catalogue } from "./catalogue.ts";

const text = catalogue("indications", { none: "no indication recorded" });

/** The label of an indication: the policy's own when it is given, the usual one, or its code when no list has it any more. */
export function indicationLabel(code: string | null, policy: Pick<PolicyBody, "indications"> | null): string {
  if (code === null) return text("none");
  const own = policy?.indications.find((item) => item.code === code)?.label;
  return own ?? indications[code as keyof typeof indications] ?? code;
}
