import { expect } from "vitest";
import { z } from "zod";
import { type Determination, determine } from "../../src/domain/criteria/index.ts";
import { ecdc2017 } from "../../src/domain/editions/ecdc-2017.ts";
import { type CasePatient, type CaseSign, caseTimeline } from "./case-timeline.ts";
import { textOf } from "./day-text.ts";
import type { ReferenceCase } from "./read-data.ts";
import { determineCase, eventIn, infectionsOn, lastOf } from "./timeline-cases.ts";

const names: Readonly<Record<string, string>> = {
  "SUTI 1a": "suti-1a",
  "SUTI 1b": "suti-1b",
  "SUTI 2": "suti-2",
  ABUTI: "abuti",
};

const element = z.record(z.string(), z.unknown());
const criteriaCase = z.object({
  admission: z.string(),
  IUC: z.string(),
  urine_culture: z.object({ collected: z.string(), result: z.string() }),
  age: z.number().optional(),
  age_years: z.number().optional(),
  age_months: z.number().optional(),
  elements: z.array(element),
  blood: z.object({ collected: z.string(), organism: z.string() }).optional(),
  donor_consent_documented: z.string().optional(),
});

/** What a case calls a sign, in our words. Pains that the definitions do not name are no sign of the list. */
function signOf(told: z.infer<typeof element>): CaseSign[] {
  const date = z.string().parse(told.date);
  const celsius = told.fever ?? told.temperature;
  if (celsius !== undefined) return [{ date, sign: "temperature", celsius: z.number().parse(celsius).toFixed(1) }];
  if (told.CVA_tenderness) return [{ date, sign: "costovertebral-pain" }];
  if (told.dysuria) return [{ date, sign: "dysuria" }];
  if (told.vomiting) return [{ date, sign: "vomiting" }];
  expect(["abdominal pain", "low back pain"]).toContain(told.symptom);
  return [];
}

function patientOf(inputs: ReferenceCase["inputs"]): CasePatient {
  const told = criteriaCase.parse(inputs);
  const inserted = /inserted (\S+?)(,|$)/.exec(told.IUC)?.[1];
  const removed = /removed (\S+)/.exec(told.IUC)?.[1] ?? null;
  if (!inserted) expect(told.IUC).toBe("none");
  return {
    wards: [{ ward: 1, from: told.admission, to: null }],
    catheters: inserted ? [{ in: inserted, out: removed }] : [],
    urine: [{ date: told.urine_culture.collected, result: told.urine_culture.result }],
    blood: told.blood ? [{ date: told.blood.collected, organism: told.blood.organism }] : [],
    signs: told.elements.flatMap(signOf),
    ageYears: told.age ?? told.age_years ?? (told.age_months ?? 0) / 12,
    ...(told.donor_consent_documented ? { donorConsent: told.donor_consent_documented } : {}),
  };
}

/** F01 to F35: which criterion, whether catheter-associated, and when. */
export function checkCriterion({ inputs, expected }: ReferenceCase): void {
  const found = lastOf(determineCase(patientOf(inputs)));
  if (expected.criterion === null) {
    expect(["not-met", "not-usable"]).toContain(found.outcome);
    expect(found.event).toBeNull();
    return;
  }
  const event = eventIn(found);
  const computed: Record<string, unknown> = {
    criterion: event.criterion,
    CAUTI: event.isCauti,
    DOE: textOf(event.dateOfEvent),
    secondary_BSI: event.secondaryBloodstream.length > 0,
    pathogens: event.pathogens,
  };
  const wanted = { ...expected, criterion: names[String(expected.criterion)] };
  expect(Object.fromEntries(Object.keys(wanted).map((key) => [key, computed[key]]))).toEqual(wanted);
}

/** F32: met, and not reported. That days are counted all the same is no matter of a determination. */
export function checkDonor({ inputs, expected }: ReferenceCase): void {
  const found = lastOf(determineCase(patientOf(inputs)));
  expect([found.outcome, expected.reported_as_HAI]).toEqual(["excluded", false]);
  expect(eventIn(found).isCauti).toBe(true);
}

/** F34: an observation patient on an inpatient ward. */
export function checkObservation({ inputs, expected }: ReferenceCase): void {
  const { arrived, DOE } = z.object({ arrived: z.string(), DOE: z.string() }).parse(inputs);
  const event = eventIn(lastOf(determineCase(infectionsOn([DOE], { wards: [{ ward: 1, from: arrived, to: null }] }))));
  expect(event.hospitalDay).toBe(expected.hospital_day_on_DOE);
  expect([event.onset, expected.class]).toEqual(["healthcare-associated", "HAI"]);
}

const europeanSigns: Readonly<Record<string, Omit<CaseSign, "date">>> = {
  dysuria: { sign: "dysuria" },
  urgency: { sign: "urgency" },
  "suprapubic tenderness": { sign: "suprapubic-tenderness" },
  "fever 38.5": { sign: "temperature", celsius: "38.5" },
  "fever 38.2": { sign: "temperature", celsius: "38.2" },
};

const europeanCase = z.object({
  admission: z.string().default("2024-03-01"),
  onset: z.string().default("2024-03-10"),
  IUC: z.string().optional(),
  device_placed: z.string().optional(),
  signs: z.array(z.string()).default(["dysuria"]),
  urine: z.string().default("Escherichia coli >=100000 CFU/ml, single organism"),
  pyuria: z.string().optional(),
});

/** The patient of G01 to G05. Where a case names no admission, it was on 1 March, and the catheter came in then. */
function europeanPatient(inputs: ReferenceCase["inputs"]): CasePatient {
  const told = europeanCase.parse(inputs);
  const removed = /removed (\S+)/.exec(told.IUC ?? "")?.[1];
  const result = told.urine === "10^5 CFU/ml, 2 species" ? "E. coli 100000, E. faecalis 100000" : told.urine;
  const date = told.onset;
  return {
    wards: [{ ward: 1, from: told.admission, to: null }],
    catheters: removed
      ? [{ in: told.admission, out: removed }]
      : told.device_placed
        ? [{ in: told.device_placed, out: null }]
        : [],
    urine: told.urine === "not cultured" ? [] : [{ date, result }],
    signs: told.signs.map((sign) => ({ date, ...(europeanSigns[sign] ?? { sign: "dysuria" }) })),
    ...(told.pyuria ? { pyuriaOn: date } : {}),
  };
}

/** G01 to G05: the European definitions, beside those of the United States where the case tells them. */
export function checkEuropean({ inputs, expected }: ReferenceCase): void {
  const patient = europeanPatient(inputs);
  const found: Determination = lastOf(determine(caseTimeline(patient), ecdc2017));
  const event = eventIn(found);
  const computed: Record<string, unknown> = {
    UTI_A: event.criterion === "uti-a",
    UTI_B: event.criterion === "uti-b",
    device_associated: event.deviceAssociated,
    HAI: event.onset === "healthcare-associated",
  };
  const { ECDC = expected, US } = expected as { ECDC?: Record<string, unknown>; US?: { CAUTI: boolean } };
  const wanted = Object.entries(ECDC).filter(([key]) => key !== "reason");
  expect(wanted.length).toBeGreaterThan(0);
  expect(Object.fromEntries(wanted.map(([key]) => [key, computed[key]]))).toEqual(Object.fromEntries(wanted));
  if (US) expect(eventIn(lastOf(determineCase(patient))).isCauti).toBe(US.CAUTI);
}
