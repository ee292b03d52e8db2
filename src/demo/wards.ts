import type { WardSetting } from "../../shared/vocabulary.ts";

/** A ward of the fictional Alder Bay Hospital and how its patients are drawn. */
export interface DemoWard {
  readonly code: string;
  readonly name: string;
  readonly type: string;
  readonly setting: WardSetting;
  readonly beds: number;
  /** Mean time on the ward, in days. */
  readonly meanStayDays: number;
  /** Share of patients who get a catheter here. */
  readonly catheterShare: number;
  /** Mean time that such a catheter stays in, in days. */
  readonly meanDwellDays: number;
  /** Patients who come straight here each day, on average. */
  readonly arrivalsADay: number;
  /** Where patients may go next, with their shares; the rest go home. */
  readonly next: Readonly<Record<string, number>>;
  /** Why catheters are put in here, with their shares; of the rest nobody says why. */
  readonly indications: Readonly<Record<string, number>>;
  /** Share of the reviews that are made by their hour. */
  readonly compliance: number;
}

const usual = { next: {}, setting: "inpatient", compliance: 0.8 } as const;

/**
 * Invented; which figures of real wards they are near to, tests/demo/utilization.test.ts says. 4N keeps its catheters far
 * too long, for reasons that its policy does not accept, and reviews half of them.
 */
export const demoWards: readonly DemoWard[] = [
  {
    ...{ ...usual, code: "3E", name: "3 East Medical", type: "medical ward", beds: 28 },
    ...{ meanStayDays: 5, catheterShare: 0.26, meanDwellDays: 4, arrivalsADay: 3.6 },
    indications: {
      ...{ "retention-or-obstruction": 0.45, "wound-healing": 0.17, "end-of-life": 0.15 },
      ...{ "output-critically-ill": 0.12, incontinence: 0.06 },
    },
  },
  {
    ...{ ...usual, code: "3W", name: "3 West Surgical", type: "surgical ward", beds: 26 },
    ...{ meanStayDays: 4, catheterShare: 0.48, meanDwellDays: 1.8, arrivalsADay: 3.8 },
    indications: { perioperative: 0.74, "retention-or-obstruction": 0.14, "wound-healing": 0.05, other: 0.03 },
  },
  {
    ...{ ...usual, code: "4N", name: "4 North Orthopedics", type: "orthopedic ward", beds: 24, compliance: 0.5 },
    ...{ meanStayDays: 6, catheterShare: 0.7, meanDwellDays: 5, arrivalsADay: 3 },
    indications: {
      ...{ perioperative: 0.34, immobilization: 0.12, incontinence: 0.2, other: 0.08 },
      "specimen-collection": 0.03,
    },
  },
  {
    ...{ ...usual, code: "4S", name: "4 South Rehabilitation", type: "rehabilitation ward", beds: 20 },
    ...{ meanStayDays: 12, catheterShare: 0.16, meanDwellDays: 6, arrivalsADay: 0.9 },
    indications: { "retention-or-obstruction": 0.6, "wound-healing": 0.25, incontinence: 0.1 },
  },
  {
    ...{ ...usual, code: "ICU", name: "Intensive Care", type: "medical/surgical critical care", beds: 14 },
    ...{ meanStayDays: 4, catheterShare: 0.93, meanDwellDays: 5.5, arrivalsADay: 1.7 },
    next: { SDU: 0.7, "3E": 0.2 },
    indications: { "output-critically-ill": 0.78, perioperative: 0.1, immobilization: 0.08, other: 0.01 },
  },
  {
    ...{ ...usual, code: "SDU", name: "Step-down Unit", type: "step-down unit", beds: 12 },
    ...{ meanStayDays: 3, catheterShare: 0.05, meanDwellDays: 2, arrivalsADay: 1 },
    next: { "3E": 0.4, "3W": 0.2, "4S": 0.1 },
    indications: { "output-critically-ill": 0.5, "retention-or-obstruction": 0.38, other: 0.05 },
  },
  {
    ...{ ...usual, code: "ED", name: "Emergency Department", type: "emergency department", beds: 18 },
    ...{ meanStayDays: 0.25, catheterShare: 0.05, meanDwellDays: 2, arrivalsADay: 0 },
    setting: "outpatient",
    indications: { "retention-or-obstruction": 0.6, "output-critically-ill": 0.25 },
  },
  {
    ...{ ...usual, code: "OR", name: "Operating Theaters", type: "operating theater", beds: 4 },
    ...{ meanStayDays: 0.15, catheterShare: 0, meanDwellDays: 1, arrivalsADay: 0 },
    setting: "procedure",
    indications: {},
  },
];

/** The ward of that code. Throws a plain Error when Alder Bay has none. */
export function wardOf(code: string): DemoWard {
  const found = demoWards.find((ward) => ward.code === code);
  if (!found) throw new Error(`Alder Bay has no ward ${code}`);
  return found;
}
