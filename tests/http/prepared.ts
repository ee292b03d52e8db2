import { endpoints } from "../../shared/api/index.ts";
import { month as monthText } from "../../shared/day.ts";
import type { Endpoint, InputOf, OutputOf } from "../../shared/endpoint.ts";
import { movesWithFault } from "./import-work.ts";
import { inputs } from "./inputs.ts";
import type { Subjects } from "./subjects.ts";

/** The wording that is chosen before it is applied. */
const oddThing = { column: "organism", wording: "Odd thing", choice: "bacterium" } as const;

type Name = keyof typeof endpoints;
type Ask = <E extends Endpoint>(endpoint: E, input: InputOf<E>) => Promise<OutputOf<E>>;

const reason = "Made ready for it";
const { addWard, admitPatient, cancelDischarge, closeWard, dischargePatient, insertCatheter, mergePatients } =
  endpoints;
const { confirmCase, decideImport, movePatient, receiveImport, recordFinding, recordNoneFound } = endpoints;
const { recordSigns, recordSpecimen, reviewCatheter } = endpoints;

const cultures = { specimenId: 0, signId: 0, findingId: 0, caseId: 0, noneFoundId: 0 };
const nothingYet = {
  ...cultures,
  otherPatientId: 0,
  catheterId: 0,
  noteId: 0,
  importId: 0,
  scopeId: 0,
  sourceId: 0,
  aliasId: 0,
};

/**
 * A patient of 10 November with everything that an endpoint needs to do its work once, and an input that it accepts.
 * `fresh` makes the names of patients and stays; `work` does what imports wait for.
 */
export async function prepared(
  ask: Ask,
  name: Name,
  where: Pick<Subjects, "fresh" | "wardId" | "toWardId"> & { readonly work: () => Promise<unknown> },
): Promise<{ about: Subjects; input: object }> {
  const { fresh, wardId, toWardId, work } = where;
  const admit = (admittedAt: string) =>
    ask(admitPatient, { wardId, identifier: fresh(), number: fresh(), admittedAt, bed: "7" });
  const stay = await admit("2026-11-10T08:00");
  const times = { at: "2026-11-11T09:00", insertedAt: "2026-11-10T09:00" };
  const about = { ...stay, ...nothingYet, wardId, toWardId, fresh, at: times.at };
  if (/merge/i.test(name)) about.otherPatientId = await dischargedPatient(ask, await admit("2026-11-01T08:00"));
  if (/Catheter|Care|Urine|Note/.test(name)) {
    const insertion = { ...inputs.insertCatheter(about), insertedAt: times.insertedAt };
    about.catheterId = (await ask(insertCatheter, insertion)).catheterId;
    const review = { catheterId: about.catheterId, at: "2026-11-10T10:00", outcome: "ask" as const, remark: fresh() };
    about.noteId = (await ask(reviewCatheter, review)).noteId;
  }
  // Somebody to count in the month that is over.
  if (name === "addOwnBaseline") await admit("2026-10-05T08:00");
  if (name === "cancelMove" || name === "voidWardStay") {
    const move = { stayId: stay.stayId, toWardId, movedAt: "2026-11-11T08:00" };
    about.wardStayId = (await ask(movePatient, move)).wardStayId;
  }
  if (name === "applyLaboratoryWord") await ask(endpoints.chooseLaboratoryWords, { words: [oddThing] });
  if (name === "changeSource" || name === "removeAlias") Object.assign(about, await sourceWithAlias(ask, about, work));
  if (name === "endWatch" || name === "voidWatch") about.scopeId = await watchedMonth(ask, about);
  if (/Case$/.test(name)) about.caseId = (await ask(recordSpecimen, inputs.recordSpecimen(about))).specimenId;
  if (/Finding$/.test(name)) about.findingId = (await ask(recordFinding, inputs.recordFinding(about))).findingId;
  if (/NoneFound$/.test(name)) about.noneFoundId = await watchedInOctober(ask, name, about);
  if (/Specimen/.test(name)) about.specimenId = (await ask(recordSpecimen, inputs.recordSpecimen(about))).specimenId;
  if (/Sign/.test(name)) about.signId = (await ask(recordSigns, inputs.recordSigns(about))).signIds[0] ?? 0;
  if (/Import/.test(name)) about.importId = await filesSent(ask, name, { fresh, work });
  return { about, input: await inputFor(ask, name, about) };
}

/** The patient of a stay that began on 1 November, discharged on the next day. */
async function dischargedPatient(ask: Ask, { stayId, patientId }: { stayId: number; patientId: number }) {
  await ask(dischargePatient, { stayId, dischargedAt: "2026-11-02T08:00", seenVersion: 1 });
  return patientId;
}

/** A ward of its own, watched in a month. */
async function watchedMonth(ask: Ask, about: Subjects & { wardId: number }): Promise<number> {
  about.wardId = (await ask(addWard, inputs.addWard(about))).wardId;
  return (await ask(endpoints.watchWard, inputs.watchWard(about))).scopeId;
}

/** A ward of its own, watched in a month that is over; where that is to be withdrawn, without an event in it. */
async function watchedInOctober(ask: Ask, name: Name, about: Subjects & { wardId: number }): Promise<number> {
  about.wardId = (await ask(addWard, inputs.addWard(about))).wardId;
  const fromMonth = monthText.parse("2026-10");
  await ask(endpoints.watchWard, { ...inputs.watchWard(about), fromMonth });
  return name === "withdrawNoneFound" ? (await ask(recordNoneFound, inputs.recordNoneFound(about))).noneFoundId : 0;
}

/** Files that were read and tried; stored already, with a line set aside, where a line is to be settled. */
async function filesSent(
  ask: Ask,
  name: Name,
  { fresh, work }: { fresh: () => string; work: () => Promise<unknown> },
): Promise<number> {
  const files = [{ name: "moves.csv", text: movesWithFault(fresh) }];
  const { importId } = await ask(receiveImport, { files });
  await work();
  if (!/Line/.test(name)) return importId;
  await ask(decideImport, { importId, decision: "apply", setAside: true });
  await work();
  return importId;
}

/** A source that was asked about the code "3 E". */
async function sourceWithAlias(ask: Ask, about: Subjects, work: () => Promise<unknown>) {
  const { fresh } = about;
  const { sourceId } = await ask(endpoints.addSource, inputs.addSource(about));
  const line = `${fresh()},${fresh()},3 E,2026-11-10T08:00,2026-11-11T08:00`;
  const files = [{ name: "moves.csv", text: `stay,patient,ward,from,to\n${line}\n` }];
  const { importId } = await ask(receiveImport, { files, sourceId });
  await work();
  const wards = [{ code: "3 E", sameAs: "3E" }];
  await ask(decideImport, { importId, decision: "apply", setAside: true, wards });
  await work();
  const { sources } = await ask(endpoints.listSources, {});
  const aliasId = sources.find((source) => source.sourceId === sourceId)?.aliases[0]?.aliasId ?? 0;
  return { sourceId, aliasId };
}

/** A month long ago that nobody has signed, without a ward of which nobody said what it is. */
async function monthToSign(ask: Ask): Promise<InputOf<typeof endpoints.signMonth>> {
  const { wards } = await ask(endpoints.listWards, {});
  for (const { wardId, setting } of wards) {
    if (setting === null) await ask(endpoints.describeWard, inputs.describeWard({ wardId } as Subjects));
  }
  const { months } = await ask(endpoints.listSignedMonths, {});
  const [year, rest] = [Math.floor(months.length / 12), (months.length % 12) + 1];
  const month = monthText.parse(`${2010 + year}-${String(rest).padStart(2, "0")}`);
  const { seen } = await ask(endpoints.readMonthFigures, { month });
  return { month, seen, replaces: 0, reason: null };
}

async function inputFor(ask: Ask, name: Name, about: Subjects): Promise<object> {
  const { stayId, patientId, otherPatientId: fromId } = about;
  if (name === "cancelDischarge") {
    const dischargedAt = "2026-11-12T09:00";
    const { version: seenVersion } = await ask(dischargePatient, { stayId, dischargedAt, seenVersion: 1 });
    return { stayId, reason, seenVersion } satisfies InputOf<typeof cancelDischarge>;
  }
  if (name === "voidWard" || name === "mergeWards") {
    const { wardId } = await ask(addWard, inputs.addWard(about));
    const into = name === "mergeWards" ? { intoWardId: about.toWardId } : {};
    return { ...inputs[name](about), wardId, ...into };
  }
  // A ward that nobody is on.
  if (name === "closeWard") {
    const { wardId } = await ask(addWard, inputs.addWard(about));
    return { ...inputs.closeWard(about), wardId } satisfies InputOf<typeof closeWard>;
  }
  if (name === "reopenCase") {
    const { version: seenVersion } = await ask(confirmCase, inputs.confirmCase(about));
    return { ...inputs.reopenCase(about), seenVersion } satisfies InputOf<typeof endpoints.reopenCase>;
  }
  if (name === "signMonth") return monthToSign(ask);
  if (name === "readSignedMonth" || name === "readSignedText") {
    const { month } = await ask(endpoints.signMonth, await monthToSign(ask));
    return { month, number: 1 } satisfies InputOf<typeof endpoints.readSignedMonth>;
  }
  if (name === "unmergePatients") return { ...(await ask(mergePatients, { patientId, fromId })), patientId, reason };
  return inputs[name](about) as object;
}
