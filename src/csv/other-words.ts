import type { indications } from "../../shared/catheter-words.ts";
import type { CatheterKind, dispositions, sexes } from "../../shared/vocabulary.ts";

/**
 * Words that other systems write for ours, in lower case with hyphens for spaces. Common practice unless said otherwise.
 * X is none of them: on identity documents it is unspecified as well as another sex, so a person decides which one it is.
 */
export const sexWords: Readonly<Record<string, keyof typeof sexes>> = {
  ...{ f: "female", w: "female", woman: "female", m: "male", man: "male" },
  ...{ o: "other", nonbinary: "other", "non-binary": "other", u: "unknown", unk: "unknown" },
};

export const catheterKindWords: Readonly<Record<string, CatheterKind>> = {
  ...{ foley: "indwelling-urethral", indwelling: "indwelling-urethral", urethral: "indwelling-urethral" },
  ...{ "indwelling-urethral-catheter": "indwelling-urethral", "suprapubic-catheter": "suprapubic", spc: "suprapubic" },
  ...{ condom: "external", "external-catheter": "external", "condom-catheter": "external" },
  ...{ straight: "intermittent", "in-and-out": "intermittent", "nephrostomy-tube": "nephrostomy" },
};

export const indicationWords: Readonly<Record<string, keyof typeof indications>> = {
  ...{ retention: "retention-or-obstruction", obstruction: "retention-or-obstruction" },
  ...{ "urinary-retention": "retention-or-obstruction", "urine-output": "output-critically-ill" },
  ...{ "strict-output": "output-critically-ill", surgery: "perioperative", "peri-operative": "perioperative" },
  ...{ "pressure-injury": "wound-healing", hospice: "end-of-life", "comfort-care": "end-of-life" },
  ...{ hematuria: "hematuria-clots", immobilisation: "immobilization" },
};

/** The numbers are the patient discharge status codes of American hospital claims (UB-04, form locator 17; from memory). */
export const dispositionWords: Readonly<Record<string, keyof typeof dispositions>> = {
  ...{ "home-or-self-care": "home", "home/self-care": "home", "01": "home", "1": "home", "06": "home-care" },
  ...{ "6": "home-care", "home-health": "home-care", "home-health-care": "home-care" },
  ...{ snf: "skilled-nursing", "skilled-nursing-facility": "skilled-nursing", "03": "skilled-nursing" },
  ...{ "3": "skilled-nursing", "long-term-care": "nursing-home", "04": "nursing-home", "4": "nursing-home" },
  ...{ rehab: "rehabilitation", irf: "rehabilitation", "62": "rehabilitation", ltach: "long-term-acute-care" },
  ...{ ltac: "long-term-acute-care", "63": "long-term-acute-care", hospital: "other-hospital" },
  ...{ transfer: "other-hospital", transferred: "other-hospital", "02": "other-hospital", "2": "other-hospital" },
  ...{ "another-hospital": "other-hospital", "65": "psychiatric", "50": "hospice", "51": "hospice" },
  ...{ ama: "against-advice", "left-against-medical-advice": "against-advice", "07": "against-advice" },
  ...{ "7": "against-advice", expired: "died", dead: "died", deceased: "died", death: "died", "20": "died" },
};
