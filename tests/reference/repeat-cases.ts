import { expect } from "vitest";
import { z } from "zod";
import type { CasePatient } from "./case-timeline.ts";
import { textOf } from "./day-text.ts";
import type { ReferenceCase } from "./read-data.ts";
import { determineCase, eventIn, infectionsOn, lastOf } from "./timeline-cases.ts";

const insertedOn = (text: string) => z.string().parse(/inserted (\d{4}-\d\d-\d\d)/.exec(text)?.[1]);

/** A21: a catheter and a fever in the timeframe of an infection that was present on admission. */
export function checkBlocked({ inputs, expected }: ReferenceCase): void {
  const told = z
    .object({
      admission: z.string(),
      POA_UTI_DOE: z.string(),
      IUC: z.string(),
      candidate: z.object({ fever: z.string(), urine_culture_collected: z.string(), organism: z.string() }),
    })
    .parse(inputs);
  const { candidate, POA_UTI_DOE: first } = told;
  const start = infectionsOn([first], { wards: [{ ward: 1, from: told.admission, to: null }] });
  const [one, two] = determineCase({
    ...start,
    catheters: [{ in: insertedOn(told.IUC), out: null }],
    urine: [...start.urine, { date: candidate.urine_culture_collected, result: candidate.organism }],
    signs: [...start.signs, { date: candidate.fever, sign: "temperature", celsius: "38.6" }],
  });
  if (!one || !two) throw new Error("there are no two determinations");
  const { repeatTimeframe: range, onset, addedPathogens } = eventIn(one);
  expect([textOf(range.first), textOf(range.last)]).toEqual(expected.RIT);
  expect(onset).toBe("present-on-admission");
  expect(two.outcome === "event").toBe(expected.new_event);
  expect(two.event !== null).toBe(expected.CAUTI_reported);
  expect([expected.action, addedPathogens]).toEqual(["add organism to the POA event", ["Pseudomonas aeruginosa"]]);
}

/** A22: the first day behind the timeframe of an infection that was present on admission. */
export function checkAfterAdmissionTimeframe({ inputs, expected }: ReferenceCase): void {
  const told = z.object({ POA_UTI_DOE: z.string(), IUC: z.string(), candidate_DOE: z.string() }).parse(inputs);
  const start = infectionsOn([told.POA_UTI_DOE, told.candidate_DOE], {
    catheters: [{ in: insertedOn(told.IUC), out: null }],
  });
  const fever = { date: told.candidate_DOE, sign: "temperature", celsius: "38.6" } as const;
  const [one, two] = determineCase({ ...start, signs: [...start.signs, fever] });
  if (!one || !two) throw new Error("there are no two determinations");
  const computed = {
    RIT_end: textOf(eventIn(one).repeatTimeframe.last),
    new_event: two.outcome === "event",
    CAUTI: eventIn(two).isCauti,
  };
  expect(computed).toEqual(expected);
}

/** A23: another type of infection in the timeframe. */
export function checkTypes({ inputs, expected }: ReferenceCase): void {
  const told = z
    .object({ event1: z.object({ DOE: z.string() }), IUC: z.string(), candidate: z.object({ DOE: z.string() }) })
    .parse(inputs);
  const start = infectionsOn([told.event1.DOE], { catheters: [{ in: insertedOn(told.IUC), out: null }] });
  const [one, two] = determineCase({
    ...start,
    urine: [...start.urine, { date: told.candidate.DOE, result: "Escherichia coli >=100000" }],
    blood: [{ date: told.candidate.DOE, organism: "Escherichia coli" }],
  });
  if (!one || !two) throw new Error("there are no two determinations");
  const steps = two.derivation.filter(({ rule, status }) => rule === "abuti" && status === "held");
  expect([eventIn(one).criterion, steps.length]).toEqual(["suti-1b", 1]);
  expect({ new_event: two.outcome === "event", event1_becomes_CAUTI: eventIn(one).isCauti }).toEqual(expected);
}

/** B01 to B07: the ward of an infection on a day, by the wards of the patient. */
export function checkLocation({ inputs, expected }: ReferenceCase): void {
  const told = z
    .object({ DOE: z.string(), stays: z.array(z.object({ location: z.string(), from: z.string(), to: z.string() })) })
    .parse(inputs);
  const names = told.stays.map(({ location }) => location);
  const patient: CasePatient = infectionsOn([told.DOE], {
    wards: told.stays.map(({ location, from, to }) => ({ ward: names.indexOf(location) + 1, from, to })),
  });
  const event = eventIn(lastOf(determineCase(patient)));
  expect(textOf(event.dateOfEvent)).toBe(told.DOE);
  expect({ location_of_attribution: names[(event.wardId ?? 0) - 1] }).toEqual(expected);
}
