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
}

/**
 * Invented. Stays of some days, catheters in most intensive care patients and in few elsewhere, and one ward (4N) that
 * keeps them far too long: common practice, no published figure is claimed.
 */
export const demoWards: readonly DemoWard[] = [
  ward("3E", "3 East Medical", { type: "medical ward", beds: 28, stay: 5, share: 0.16, dwell: 3, arrivals: 3.6 }),
  ward("3W", "3 West Surgical", { type: "surgical ward", beds: 26, stay: 4, share: 0.34, dwell: 2, arrivals: 3.4 }),
  ward("4N", "4 North Orthopedics", { type: "orthopedic ward", beds: 24, stay: 6, share: 0.62, dwell: 5, arrivals: 3 }),
  ward("4S", "4 South Rehabilitation", {
    type: "rehabilitation ward",
    beds: 20,
    stay: 12,
    share: 0.1,
    dwell: 6,
    arrivals: 0.5,
  }),
  ward(
    "ICU",
    "Intensive Care",
    { type: "medical/surgical critical care", beds: 14, stay: 4, share: 0.82, dwell: 4, arrivals: 1.4 },
    { SDU: 0.7, "3E": 0.2 },
  ),
  ward(
    "SDU",
    "Step-down Unit",
    { type: "step-down unit", beds: 12, stay: 3, share: 0.3, dwell: 3, arrivals: 0.8 },
    { "3E": 0.4, "3W": 0.2, "4S": 0.1 },
  ),
  {
    ...ward("ED", "Emergency Department", {
      type: "emergency department",
      beds: 18,
      stay: 0.25,
      share: 0.08,
      dwell: 2,
      arrivals: 0,
    }),
    setting: "outpatient",
  },
  {
    ...ward("OR", "Operating Theaters", {
      type: "operating theater",
      beds: 4,
      stay: 0.15,
      share: 0,
      dwell: 1,
      arrivals: 0,
    }),
    setting: "procedure",
  },
];

function ward(
  code: string,
  name: string,
  said: { type: string; beds: number; stay: number; share: number; dwell: number; arrivals: number },
  next: Readonly<Record<string, number>> = {},
): DemoWard {
  return {
    code,
    name,
    type: said.type,
    setting: "inpatient",
    beds: said.beds,
    meanStayDays: said.stay,
    catheterShare: said.share,
    meanDwellDays: said.dwell,
    arrivalsADay: said.arrivals,
    next,
  };
}
