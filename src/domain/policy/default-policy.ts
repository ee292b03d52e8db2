import { indications } from "../../../shared/catheter-words.ts";
import type { PolicyBody, PolicyItem } from "../../../shared/policy.ts";
import type { PolicyRule } from "../../../shared/policy-rules.ts";

const hicpac = "HICPAC, Guideline for prevention of catheter-associated urinary tract infections 2009";
const ahrq = "AHRQ, Toolkit for reducing CAUTI in hospitals, appendix I";

/** The appropriate indications of the guideline's table 2, in its order. */
const table2: readonly (keyof typeof indications)[] = [
  "retention-or-obstruction",
  "output-critically-ill",
  "perioperative",
  "wound-healing",
  "immobilization",
  "end-of-life",
];

function item(code: string, label: string, source: string): PolicyItem {
  return { code, label, source };
}

/** Why each rule of the built-in policy says what it says; people who set another one read it beside their own. */
export const defaultSources: Readonly<Record<PolicyRule, string>> = {
  review:
    "Daily: SHEA/IDSA/APIC practice recommendations (Patel et al., Infect Control Hosp Epidemiol 2023). From day 2 on and by noon: common practice.",
  threshold:
    "None in general: no guideline gives a number of days for every catheter. Perioperative: HICPAC 2009, removal preferably within 24 hours; day 3 is the first on which these have passed for certain.",
  confirmation: "Common practice.",
  indications: `${hicpac}, table 2.`,
  "required-record": "Documentation elements of a catheterization: common practice.",
  bundle: `${ahrq}; ${hicpac}, section III.`,
  "bed-hold": "No limit: no source gives a number of hours.",
};

/**
 * What holds where neither the ward nor the facility has set a policy: version number 0. Sources: {@link defaultSources}.
 *
 * The perioperative threshold: days are whole, so a catheter of day 2 can be some minutes or nearly two days old, and one
 * that was removed in time must never have been called late. On day 2 the daily review asks.
 */
export const defaultPolicy: PolicyBody = {
  indications: table2.map((code, i) => item(code, indications[code], `${hicpac}, table 2, item ${i + 1}`)),
  reviewFromDay: 2,
  reviewDueAt: "12:00",
  thresholdDays: null,
  thresholdByIndication: { perioperative: 2 },
  requiredFields: [
    "sizeFr",
    "balloonMl",
    "indication",
    "patientResponse",
    "urineReturnedMl",
    "urineAppearance",
    "insertedBy",
    "insertedIn",
  ],
  bundle: [
    item("closed-system", "The drainage system is kept closed", `${ahrq}; ${hicpac}`),
    item(
      "bag-position",
      "The bag hangs below the bladder and off the floor",
      `${ahrq}; ${hicpac} (from memory: floor)`,
    ),
    item("unobstructed-flow", "Urine flows freely: no kinks, no loops", `${ahrq}; ${hicpac}`),
    item("meatal-hygiene", "Routine hygiene of the meatus, without antiseptic", `${ahrq}; ${hicpac}`),
    item("secured", "The catheter is secured", `${ahrq}; ${hicpac} (from memory)`),
    item("sample-from-port", "Samples are taken from the port, after cleaning it", `${ahrq}; ${hicpac}`),
    item("own-container", "The bag is emptied into a container of the patient's own", `${ahrq}; ${hicpac}`),
    item("indication-documented", "The indication is documented today", ahrq),
  ],
  confirmationHours: 48,
  bedHoldHours: null,
};
