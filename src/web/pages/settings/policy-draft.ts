import { type PolicyBody, type PolicyItem, policyBody } from "../../../../shared/policy.ts";
import {
  type PolicyRule,
  type PolicyVersionNamed,
  policyRules,
  ruleSentence,
} from "../../../../shared/policy-rules.ts";
import type { RecordField } from "../../../../shared/records.ts";
import { numberTyped } from "../../parts/form/as-typed.ts";
import { newKey } from "../../parts/server.ts";

/** An item of one of a policy's lists, as it is typed. */
export interface ItemDraft extends PolicyItem {
  /** Tells items apart while their words change. */
  readonly key: string;
  /** The item is new, so its short name is not settled yet. */
  readonly isNew: boolean;
  /** Of an indication: its own threshold. */
  readonly threshold: string;
}

/** A version of a policy as it is typed. */
export interface PolicyDraft {
  /** The number of the version on which it builds; 0: none. */
  readonly replaces: number;
  readonly holds: "own" | "above";
  readonly reviewFromDay: string;
  readonly reviewDueAt: string;
  readonly thresholdDays: string;
  readonly confirmationHours: string;
  readonly bedHoldHours: string;
  readonly indications: readonly ItemDraft[];
  readonly requiredFields: readonly RecordField[];
  readonly bundle: readonly ItemDraft[];
  readonly fromDay: string;
  readonly reason: string;
}

/** The form as it begins: with the rules of a version. */
export function draftOf(
  body: PolicyBody,
  { replaces, fromDay }: Pick<PolicyDraft, "replaces" | "fromDay">,
): PolicyDraft {
  const thresholds = new Map(Object.entries(body.thresholdByIndication));
  return {
    ...{ replaces, fromDay, holds: "own", reason: "" },
    reviewFromDay: String(body.reviewFromDay),
    reviewDueAt: body.reviewDueAt,
    thresholdDays: textOf(body.thresholdDays),
    confirmationHours: String(body.confirmationHours),
    bedHoldHours: textOf(body.bedHoldHours),
    indications: body.indications.map((item) => itemDraft(item, { threshold: textOf(thresholds.get(item.code)) })),
    requiredFields: body.requiredFields,
    bundle: body.bundle.map((item) => itemDraft(item)),
  };
}

/** An item of a list as it is typed. */
export function itemDraft(item: PolicyItem, more: Partial<ItemDraft> = {}): ItemDraft {
  return { ...item, key: newKey(), isNew: false, threshold: "", ...more };
}

function textOf(number: number | null | undefined): string {
  return number == null ? "" : String(number);
}

/** The rules as they are sent; what cannot be read goes as it was typed, for the server to say so at its field. */
export function bodyOf(draft: PolicyDraft): PolicyBody {
  const thresholds = draft.indications.filter(({ threshold }) => threshold.trim() !== "");
  return {
    indications: draft.indications.map(itemSaid),
    reviewFromDay: numberTyped(draft.reviewFromDay),
    reviewDueAt: draft.reviewDueAt.trim(),
    thresholdDays: numberTyped(draft.thresholdDays),
    thresholdByIndication: Object.fromEntries(thresholds.map(({ code, threshold }) => [code, numberTyped(threshold)])),
    requiredFields: [...draft.requiredFields],
    bundle: draft.bundle.map(itemSaid),
    confirmationHours: numberTyped(draft.confirmationHours),
    bedHoldHours: numberTyped(draft.bedHoldHours),
  };
}

function itemSaid({ code, label, source }: ItemDraft): PolicyItem {
  return { code: code.trim(), label: label.trim(), source: source.trim() };
}

/** What each rule is made of. */
const madeOf: Readonly<Record<PolicyRule, readonly (keyof PolicyBody)[]>> = {
  review: ["reviewFromDay", "reviewDueAt"],
  threshold: ["thresholdDays", "thresholdByIndication", "indications"],
  confirmation: ["confirmationHours"],
  indications: ["indications"],
  "required-record": ["requiredFields"],
  bundle: ["bundle"],
  "bed-hold": ["bedHoldHours"],
};

/** The sentence that each rule will print; null while its fields cannot be read. */
export function sentencesOf(
  draft: PolicyDraft,
  version: PolicyVersionNamed,
): Readonly<Record<PolicyRule, string | null>> {
  const body = bodyOf(draft);
  const faulty = new Set(policyBody.safeParse(body).error?.issues.map(({ path }) => path[0]));
  const sentence = (rule: PolicyRule): string | null =>
    madeOf[rule].some((name) => faulty.has(name)) ? null : ruleSentence(body, rule, version);
  return Object.fromEntries(policyRules.map((rule) => [rule, sentence(rule)])) as Record<PolicyRule, string | null>;
}
