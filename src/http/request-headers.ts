import { refuse } from "../../shared/problems.ts";

/** A header as Node hands it over: a list when it was sent more than once. */
type Header = string | string[] | undefined;

/**
 * The key under which a creation is done once: 1 to 200 visible ASCII characters.
 * Refuses `idempotency-key-missing` and `idempotency-key-unreadable`.
 */
export function idempotencyKey(header: Header): string {
  if (header === undefined || header === "")
    refuse("idempotency-key-missing", "The header Idempotency-Key is missing.");
  if (typeof header !== "string" || !/^[\x21-\x7e]{1,200}$/.test(header))
    return refuse("idempotency-key-unreadable", "The header Idempotency-Key is not one key of visible characters.");
  return header;
}

/**
 * The version of an entry that the caller saw: a strong entity tag, such as `"3"` (RFC 9110, section 13.1.1).
 * Refuses `version-missing` and `version-unreadable`, also for `*` and weak tags: they name no version.
 */
export function seenVersion(header: Header): number {
  if (header === undefined || header === "") refuse("version-missing", "The header If-Match is missing.");
  const [, digits] = typeof header === "string" ? (/^"([1-9]\d{0,8})"$/.exec(header) ?? []) : [];
  return digits === undefined
    ? refuse("version-unreadable", 'The header If-Match is not one version in quotes, such as "3".')
    : Number(digits);
}

/**
 * The figures of signed months that the caller says may change: the digits of an earlier refusal. Null when nothing is
 * acknowledged; what stands for other figures is refused like nothing.
 */
export function acknowledgedChanges(header: Header): string | null {
  return typeof header === "string" && header !== "" ? header : null;
}
