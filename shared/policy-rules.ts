import { indications as commonIndications } from "./catheter-words.ts";
import type { PolicyBody } from "./policy.ts";
import { recordFields } from "./records.ts";

const rules = {
  review: ({ reviewFromDay, reviewDueAt }) =>
    `a catheter is reviewed every day from eligibility day ${reviewFromDay} on, by ${reviewDueAt}`,
  threshold: thresholdText,
  confirmation: ({ confirmationHours }) =>
    `a catheter not confirmed in place for ${hours(confirmationHours)} is doubtful`,
  indications: ({ indications }) => `a catheter is accepted for: ${list(indications)}`,
  "required-record": ({ requiredFields }) =>
    requiredFields.length === 0
      ? "the record of an insertion may leave everything open but its time"
      : `the record of an insertion says: ${requiredFields.map((field) => recordFields[field]).join("; ")}`,
  bundle: ({ bundle }) => `a maintenance bundle check covers: ${list(bundle)}`,
  "bed-hold": ({ bedHoldHours }) =>
    bedHoldHours === null
      ? "a bed may be held during a procedure without a limit"
      : `a bed that is held during a procedure for more than ${hours(bedHoldHours)} is listed`,
} as const satisfies Record<string, (body: PolicyBody) => string>;

/** The rules of a policy. */
export type PolicyRule = keyof typeof rules;
export const policyRules = Object.keys(rules) as PolicyRule[];

/** Which version of whose policy it is; number 0, without a first day, is the one that is built in. */
export interface PolicyVersionNamed {
  readonly number: number;
  /** The ward as people call it; null: the facility's own. */
  readonly ward: string | null;
  readonly fromDay: string | null;
}

/** A rule in the sentence that flags print: it names the version, whose it is, and its first day. */
export function ruleSentence(body: PolicyBody, rule: PolicyRule, version: PolicyVersionNamed): string {
  return `${versionText(version)}: ${rules[rule](body)}.`;
}

function versionText({ number, ward, fromDay }: PolicyVersionNamed): string {
  if (number === 0 || fromDay === null) return "Built-in policy";
  const whose = ward === null ? "Policy of the facility" : `Policy of unit ${ward}`;
  return `${whose}, version ${number}, from ${fromDay}`;
}

/** What an indication is called: by the policy, else in the common list. */
export function indicationLabel({ indications }: PolicyBody, code: string): string {
  const own = indications.find((listed) => listed.code === code);
  if (own) return own.label;
  // Own words only: "constructor" is a code like any other.
  return Object.hasOwn(commonIndications, code) ? commonIndications[code as keyof typeof commonIndications] : code;
}

function thresholdText(body: PolicyBody): string {
  const { thresholdDays, thresholdByIndication } = body;
  const others = Object.entries(thresholdByIndication).map(
    ([code, days]) => `after ${daysText(days)} with the indication "${indicationLabel(body, code)}"`,
  );
  const general = thresholdDays === null ? [] : [`after ${daysText(thresholdDays)}`];
  const all = [...general, ...others];
  if (all.length === 0) return "no number of days puts a catheter past a threshold";
  const past = `a catheter is past the threshold ${all.join(", ")}`;
  return thresholdDays === null ? `${past}; other indications have no threshold` : past;
}

function daysText(days: number): string {
  return `eligibility day ${days}`;
}

function hours(count: number): string {
  return count === 1 ? "1 hour" : `${count} hours`;
}

function list(items: readonly { readonly label: string }[]): string {
  return items.map(({ label }) => label).join("; ");
}
