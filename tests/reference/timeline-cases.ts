import { expect } from "vitest";
import { z } from "zod";
import { type Determination, determine } from "../../src/domain/criteria/index.ts";
import { us2024 } from "../../src/domain/editions/us-2024.ts";
import { type CasePatient, type CaseSign, caseTimeline } from "./case-timeline.ts";
import { dayOf, textOf } from "./day-text.ts";
import type { ReferenceCase } from "./read-data.ts";

const coli = "Escherichia coli >=100000 CFU/ml, one species";

/** The determinations of a case by the definitions of the United States. */
export function determineCase(patient: CasePatient): Determination[] {
  return determine(caseTimeline(patient), us2024);
}

/** The only, or the last, determination of a case. */
export function lastOf(list: readonly Determination[]): Determination {
  const last = list.at(-1);
  if (!last) throw new Error("there is no determination");
  return last;
}

/** The event of the determination. */
export function eventIn({ event, derivation }: Determination) {
  if (!event) throw new Error(derivation.map(({ sentence }) => sentence).join("\n"));
  return event;
}

const rangeText = (range: { first: number; last: number } | null) => range && [textOf(range.first), textOf(range.last)];
const onsets = { "present-on-admission": "POA", "healthcare-associated": "HAI" } as const;

const windowCase = z.object({
  admission_to_inpatient_location: z.string(),
  urine_culture_collected: z.string(),
  culture: z.string().default(coli),
  elements: z.array(z.object({ sign: z.string(), date: z.string() })),
  IUC: z.string().optional(),
});

/** A04 to A10: one culture and one fever. */
export function checkWindow({ inputs, expected }: ReferenceCase): void {
  const told = windowCase.parse(inputs);
  const admitted = told.admission_to_inpatient_location;
  const signs = told.elements.map(({ sign, date }): CaseSign => {
    const celsius = /^fever ([\d.]+) C/.exec(sign)?.[1];
    return { date, sign: "temperature", celsius: z.string().parse(celsius) };
  });
  const found = lastOf(
    determineCase({
      wards: [{ ward: 1, from: admitted, to: null }],
      catheters: told.IUC ? [{ in: admitted, out: null }] : [],
      urine: [{ date: told.urine_culture_collected, result: told.culture }],
      signs,
    }),
  );
  expect(found.outcome === "event").toBe(expected.criterion_met);
  const { event } = found;
  const window = found.derivation.find(({ rule }) => rule === "infection-window")?.sentence;
  expect(window).toBeDefined();
  if (!event) {
    expect(found.outcome).toBe("not-met");
    if (expected.usable_from)
      expect(window).toContain(`elements count from ${Number(String(expected.usable_from).slice(8))} May`);
    return;
  }
  const computed: Record<string, unknown> = {
    IWP: rangeText(event.window),
    criterion_met: true,
    date_of_event: textOf(event.dateOfEvent),
    hospital_day: event.hospitalDay,
    class: onsets[event.onset],
    RIT: rangeText(event.repeatTimeframe),
    SBAP: rangeText(event.bloodstreamPeriod),
    SBAP_length_days: (event.bloodstreamPeriod?.last ?? 0) - (event.bloodstreamPeriod?.first ?? 0) + 1,
    usable_window_from: textOf(event.window.usableFrom),
  };
  expect(Object.fromEntries(Object.keys(expected).map((key) => [key, computed[key]]))).toEqual(expected);
}

/** A patient with dysuria and a culture on each of these days, and no catheter unless told. */
export function infectionsOn(days: readonly string[], rest: Partial<CasePatient> = {}): CasePatient {
  return {
    wards: [{ ward: 1, from: "2024-06-01", to: null }],
    urine: days.map((date) => ({ date, result: coli })),
    signs: days.map((date) => ({ date, sign: "dysuria" })),
    ...rest,
  };
}

/** A12: the first day after the timeframe. */
export function checkAfterTimeframe({ inputs, expected }: ReferenceCase): void {
  const told = z.object({ event1_DOE: z.string(), candidate_DOE: z.string() }).parse(inputs);
  const [first, second] = determineCase(infectionsOn([told.event1_DOE, told.candidate_DOE]));
  if (!first || !second) throw new Error("there are no two determinations");
  expect(textOf(eventIn(first).dateOfEvent)).toBe(told.event1_DOE);
  expect({
    RIT: rangeText(eventIn(first).repeatTimeframe),
    new_event: second.outcome === "event",
    new_RIT: rangeText(eventIn(second).repeatTimeframe),
  }).toEqual(expected);
}

/** A14: a later admission. */
export function checkLaterAdmission({ inputs, expected }: ReferenceCase): void {
  const told = z
    .object({
      admission1: z.tuple([z.string(), z.string()]),
      event1_DOE: z.string(),
      admission2_start: z.string(),
      candidate_DOE: z.string(),
    })
    .parse(inputs);
  const [from, to] = told.admission1;
  const wards = [
    { ward: 1, from, to },
    { ward: 1, from: told.admission2_start, to: null },
  ];
  const second = lastOf(
    determineCase(infectionsOn([told.event1_DOE, told.candidate_DOE], { wards, furtherStayAt: 1 })),
  );
  const { hospitalDay, onset } = eventIn(second);
  expect({ candidate_hospital_day: hospitalDay, new_event: second.outcome === "event", class: onsets[onset] }).toEqual(
    expected,
  );
}

/** A16: blood on the day after the bloodstream period. */
export function checkBloodstreamPeriod({ inputs, expected }: ReferenceCase): void {
  const told = z.record(z.string(), z.string()).parse(inputs);
  const event = eventIn(
    lastOf(
      determineCase({
        wards: [{ ward: 1, from: "2024-03-01", to: null }],
        catheters: [{ in: "2024-03-01", out: null }],
        urine: [{ date: told.urine_culture_collected ?? "", result: `${told.urine_organism} >=100000` }],
        signs: [{ date: told.date_of_event ?? "", sign: "temperature", celsius: "38.6" }],
        blood: [{ date: told.blood_culture_collected ?? "", organism: told.blood_organism ?? "" }],
      }),
    ),
  );
  expect(textOf(event.dateOfEvent)).toBe(told.date_of_event);
  expect({ SBAP: rangeText(event.bloodstreamPeriod), secondary_BSI: event.secondaryBloodstream.length > 0 }).toEqual(
    expected,
  );
}

/** A19: two days after discharge. */
export function checkAfterDischarge({ inputs, expected }: ReferenceCase): void {
  const told = z.record(z.string(), z.string()).parse(inputs);
  const inserted = /inserted (\S+),/.exec(told.IUC ?? "")?.[1];
  const found = lastOf(
    determineCase({
      wards: [{ ward: 5, from: "2024-04-01", to: told.discharge_date ?? "" }],
      catheters: [{ in: z.string().parse(inserted), out: null }],
      urine: [{ date: told.DOE ?? "", result: coli }],
      signs: [{ date: told.DOE ?? "", sign: "temperature", celsius: "38.6" }],
    }),
  );
  expect({ report: found.outcome === "event" }).toEqual(expected);
  expect(found.outcome).toBe("after-discharge");
}

/** A20: days counted from admission. */
export function checkCollectionDate({ inputs, expected }: ReferenceCase): void {
  const told = z
    .object({
      urine_collected: z.string(),
      suprapubic_tenderness: z.string(),
      temperature_HD4: z.number(),
      organism: z.string(),
    })
    .parse(inputs);
  const onDay = (text: string) => textOf(dayOf("2024-03-01") + Number(text.slice(2)) - 1);
  const patient: CasePatient = {
    wards: [{ ward: 1, from: onDay("HD1"), to: null }],
    catheters: [{ in: onDay("HD1"), out: null }],
    urine: [{ date: onDay(told.urine_collected), result: told.organism }],
    signs: [{ date: onDay("HD4"), sign: "temperature", celsius: told.temperature_HD4.toFixed(1) }],
    ageYears: 50,
  };
  expect(lastOf(determineCase(patient)).outcome === "event").toBe(expected.fever_element_counts);
  const tender: CaseSign = { date: onDay(told.suprapubic_tenderness), sign: "suprapubic-tenderness" };
  const event = eventIn(lastOf(determineCase({ ...patient, signs: [...patient.signs, tender] })));
  expect([event.criterion, event.hospitalDay, event.deviceAssociated]).toEqual(["suti-1a", 4, true]);
  expect([expected.criterion, expected.DOE, expected.catheter_associated]).toEqual(["SUTI 1a", "HD4", true]);
}
