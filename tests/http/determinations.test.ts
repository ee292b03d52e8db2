import { afterAll, beforeAll, expect, it } from "vitest";
import { z } from "zod";
import { endpoints } from "../../shared/api/index.ts";
import { signName } from "../../shared/culture-words.ts";
import { day } from "../../shared/day.ts";
import { onEachDatabase } from "../databases/databases.ts";
import { auditOf } from "../databases/read-back.ts";
import { readCases, titleOf } from "../reference/read-data.ts";
import { type Desk, openDesk } from "./desk.ts";
import { fullRecord } from "./inputs.ts";

const { correctPatient, correctSpecimen, readDeterminations, recordSigns, recordSpecimen } = endpoints;

/** Cases of March 2024, asked in November 2026: both months begin the same count of days, and no rule knows a month. */
const inNovember = (text: string) => text.replace("2024-03-", "2026-11-");

const told = z.object({
  admission_to_inpatient_location: z.string().transform(inNovember),
  urine_culture_collected: z.string().transform(inNovember),
  elements: z.tuple([z.object({ sign: z.literal("fever 38.6 C"), date: z.string().transform(inNovember) })]),
  culture: z.literal("Escherichia coli >=100000 CFU/ml, one species"),
  IUC: z.literal("in place since admission unless stated"),
});
const caseOf = (id: string) => {
  const found = readCases("determination-cases.json").find((one) => one.id === id);
  if (!found) throw new Error(`there is no case ${id}`);
  return { ...found, inputs: told.parse(found.inputs) };
};
const met = caseOf("A04");
const notMet = caseOf("A06");

onEachDatabase("determinations of a record", (fresh) => {
  let desk: Desk;
  beforeAll(async () => {
    desk = await openDesk(await fresh());
  });
  afterAll(() => desk?.close());

  /** The record of a case: every other sign was looked for on the day of the culture, and absent. */
  async function recorded(
    { inputs }: typeof met,
    name: string,
    { birthDay = "1970-01-01" as string | null, catheter = true } = {},
  ) {
    const { admission_to_inpatient_location: admitted, urine_culture_collected: collected, elements } = inputs;
    const { wards } = desk.hospital;
    const { patientId, stayId } = await desk.ask(endpoints.admitPatient, {
      ...{ wardId: wards["3E"], identifier: name, number: `S-${name}` },
      birthDay: birthDay === null ? null : day.parse(birthDay),
      admittedAt: `${admitted}T08:00`,
    });
    const insertion = {
      ...{ stayId, kind: "indwelling-urethral" as const, insertedAt: `${admitted}T08:30`, record: fullRecord },
      ...{ indication: "perioperative", sizeFr: 14, balloonMl: 10 },
    };
    if (catheter) await desk.ask(endpoints.insertCatheter, insertion);
    const [fever] = elements;
    const warm = { sign: "temperature", finding: "present", temperature: "38.6 °C" } as const;
    const signs = await desk.ask(recordSigns, { patientId, day: day.parse(fever.date), signs: [warm] });
    await desk.ask(recordSigns, {
      ...{ patientId, day: day.parse(collected) },
      signs: signName.options.map((sign) => ({ sign, finding: "absent" as const })),
    });
    const { specimenId } = await desk.ask(recordSpecimen, {
      ...{ patientId, kind: "urine", method: "culture", status: "final", collectedAt: `${collected}T07:00` },
      organisms: [{ name: "Escherichia coli", count: ">=100000" }],
    });
    return { patientId, specimenId, signId: signs.signIds[0] ?? 0 };
  }

  const determined = async (patientId: number) => {
    const { determinations } = await desk.ask(readDeterminations, { patientId, family: "us" });
    const [one, ...others] = determinations;
    if (!one || others.length > 0) throw new Error(`there are ${determinations.length} determinations`);
    return one;
  };
  const days = ([first, last]: string[]) => ({ first: inNovember(first ?? ""), last: inNovember(last ?? "") });

  it(titleOf({ ...met, title: `met: ${met.title}` }), async () => {
    const { patientId, specimenId, signId } = await recorded(met, "MET");
    const answer = await desk.ask(readDeterminations, { patientId, family: "us" }, { person: "bedside" });
    expect(answer).toMatchObject({
      ...{ patientId, knownThrough: "2026-11-20" },
      caution: "A surveillance determination is not a diagnosis and must not guide treatment.",
    });
    const { outcome, event, subject, editionId, derivation } = await determined(patientId);
    const expected = z
      .object({ IWP: z.array(z.string()), RIT: z.array(z.string()), SBAP: z.array(z.string()) })
      .parse(met.expected);
    expect([outcome, editionId, subject]).toEqual([
      ...["event", "us-2024"],
      { kind: "specimen", id: specimenId, day: "2026-11-10" },
    ]);
    expect(event).toMatchObject({
      ...{ criterion: "suti-1a", dateOfEvent: inNovember(String(met.expected.date_of_event)) },
      ...{ hospitalDay: met.expected.hospital_day, onset: "healthcare-associated", isCauti: true },
      ...{ window: days(expected.IWP), repeatTimeframe: days(expected.RIT), bloodstreamPeriod: days(expected.SBAP) },
      ...{ wardId: desk.hospital.wards["3E"], pathogens: ["Escherichia coli"], secondaryBloodstream: [] },
    });
    const step = derivation.find(({ rule }) => rule === "suti-1a");
    expect(step).toMatchObject({ status: "held", evidence: expect.arrayContaining([{ kind: "sign", id: signId }]) });
    expect(step?.sources.join()).toContain("CDC Patient Safety Component Manual, chapter 7");
  });

  it(titleOf({ ...notMet, title: `not met: ${notMet.title}` }), async () => {
    const { patientId } = await recorded(notMet, "NOT-MET");
    const { outcome, event, derivation } = await determined(patientId);
    expect([outcome, event]).toEqual(["not-met", null]);
    expect(derivation.flatMap(({ nearest }) => (nearest === null ? [] : [nearest]))).toContain(
      "Nearest: a temperature of 38.6 °C on 6 November 2026 lies one day before the window opened.",
    );
  });

  it("follow the record: a result that was withdrawn, one that cannot be read, a sign that nobody saw", async () => {
    const { patientId, specimenId, signId } = await recorded(met, "FOLLOW");
    const outcomes = async () => (await determined(patientId)).outcome;
    expect(await outcomes()).toBe("event");
    const change = { specimenId, reason: "By telephone" };
    await desk.ask(correctSpecimen, { ...change, status: "withdrawn", seenVersion: 1 });
    expect(await outcomes()).toBe("set-aside");
    const unreadable = [{ name: "Escherichia coli", count: "10.000" }];
    await desk.ask(correctSpecimen, { ...change, status: "corrected", organisms: unreadable, seenVersion: 2 });
    const { outcome, derivation } = await determined(patientId);
    expect(outcome).toBe("cannot-tell");
    expect(derivation.map(({ lookUp }) => lookUp)).toContain("Ask the laboratory how much Escherichia coli grew.");
    const odd = [{ name: "Odd thing", count: ">100000" }];
    await desk.ask(correctSpecimen, { ...change, organisms: odd, seenVersion: 3 });
    expect(await outcomes()).toBe("cannot-tell");
    const chosen = [{ name: "Odd thing", group: "bacterium" as const, count: ">100000" }];
    await desk.ask(correctSpecimen, { ...change, organisms: chosen, seenVersion: 4 });
    expect(await outcomes()).toBe("event");
    await desk.ask(endpoints.voidSign, { signId, reason: "Another patient's", seenVersion: 1 });
    expect(await outcomes()).toBe("not-met");
    await desk.ask(endpoints.voidSpecimen, { ...change, seenVersion: 5 });
    const { determinations } = await desk.ask(readDeterminations, { patientId, family: "us" });
    expect(determinations).toEqual([]);
  });

  // Fever alone, without a catheter, counts up to 65 years of age: CDC Patient Safety Component Manual, chapter 7 (read in
  // the national adaptation of Taiwan). The fever was on 7 November 2026.
  it.each<[string, string | null, string, string | null]>([
    ["65 until the next day", "1960-11-08", "event", "suti-1b"],
    ["66 on that day", "1960-11-07", "not-met", null],
    ["of an age that nobody knows", null, "cannot-tell", null],
  ])("know a patient without a catheter who is %s", async (_, birthDay, outcome, criterion) => {
    const { patientId } = await recorded(met, `AGE-${birthDay}`, { birthDay, catheter: false });
    const { event, ...answer } = await determined(patientId);
    expect([answer.outcome, event?.criterion ?? null]).toEqual([outcome, criterion]);
  });

  it("are made anew when somebody finds out when the patient was born, who must have seen what the record said", async () => {
    const { patientId } = await recorded(met, "BORN-LATER", { birthDay: null, catheter: false });
    expect((await determined(patientId)).outcome).toBe("cannot-tell");
    const correction = { patientId, sex: null, reason: "Asked the patient", seen: { birthDay: null, sex: null } };
    const later = await desk.refused(correctPatient, { ...correction, birthDay: day.parse("2026-11-21") });
    expect([later.code, later.errors[0]?.pointer]).toEqual(["in-the-future", "/birthDay"]);
    const young = { ...correction, birthDay: day.parse("1960-11-08") };
    await desk.ask(correctPatient, young);
    expect((await determined(patientId)).outcome).toBe("event");
    const stale = await desk.refused(correctPatient, { ...young, birthDay: day.parse("1960-11-07") });
    expect([stale.code, stale.current]).toEqual(["stale-version", { birthDay: "1960-11-08", sex: null }]);
    const seen = { birthDay: day.parse("1960-11-08"), sex: null };
    await desk.ask(correctPatient, { ...young, birthDay: day.parse("1960-11-07"), seen });
    expect((await determined(patientId)).outcome).toBe("not-met");
    const { patient, corrections } = await desk.ask(endpoints.readPatient, { patientId });
    expect(patient.birthDay).toBe("1960-11-07");
    expect(corrections.map(({ before, reason }) => [before.birthDay, reason])).toEqual([
      [null, "Asked the patient"],
      ["1960-11-08", "Asked the patient"],
    ]);
  });

  it("are told by European definitions too, and each look is recorded", async () => {
    const { patientId } = await recorded(met, "EUROPE");
    const { determinations } = await desk.ask(readDeterminations, { patientId, family: "ecdc" });
    expect(determinations).toMatchObject([{ editionId: "ecdc-2017", outcome: "event", event: { criterion: "uti-a" } }]);
    const { store } = desk.hospital;
    const { facilityId } = await store.read(({ db }) => db.patient.findUniqueOrThrow({ where: { id: patientId } }));
    const trail = (await auditOf(store, facilityId)).filter(({ patientIds }) => patientIds.includes(patientId));
    expect(trail.filter(({ action }) => action === "view-determinations").map(({ details }) => details)).toEqual([
      { patientId, family: "ecdc" },
    ]);
  });
});
