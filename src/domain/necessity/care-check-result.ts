import type { ItemState } from "../../../shared/catheter-words.ts";
import type { PolicyBody } from "../../../shared/policy.ts";

/** `broken`: something was not kept. `incomplete`: nothing was found wrong, and not everything was looked at. */
export type CareCheckResult = "kept" | "broken" | "incomplete";

/**
 * A care check against the bundle of the policy, all or none: it is kept only when every item of the bundle was looked
 * at and was kept or did not apply. An item that was not recorded is never taken for kept.
 * All or none: how bundles are measured (common practice).
 */
export function careCheckResult(
  items: Readonly<Record<string, ItemState>> | null,
  { bundle }: Pick<PolicyBody, "bundle">,
): CareCheckResult {
  const found = items ?? {};
  if (Object.values(found).includes("broken")) return "broken";
  return bundle.every(({ code }) => Object.hasOwn(found, code)) ? "kept" : "incomplete";
}
