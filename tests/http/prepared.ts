import { endpoints } from "../../shared/api/index.ts";
import type { Endpoint, InputOf, OutputOf } from "../../shared/endpoint.ts";
import { inputs, type Subjects } from "./inputs.ts";

type Name = keyof typeof endpoints;
type Ask = <E extends Endpoint>(endpoint: E, input: InputOf<E>) => Promise<OutputOf<E>>;

const reason = "Made ready for it";
const { admitPatient, cancelDischarge, dischargePatient, insertCatheter, mergePatients, movePatient, reviewCatheter } =
  endpoints;

/**
 * A patient of 10 November with everything that an endpoint needs to do its work once, and an input that it accepts.
 * `fresh` makes the names of patients and stays.
 */
export async function prepared(
  ask: Ask,
  name: Name,
  { fresh, wardId, toWardId }: Pick<Subjects, "fresh" | "wardId" | "toWardId">,
): Promise<{ about: Subjects; input: object }> {
  const admit = (admittedAt: string) =>
    ask(admitPatient, { wardId, identifier: fresh(), number: fresh(), admittedAt, bed: "7" });
  const stay = await admit("2026-11-10T08:00");
  const times = { at: "2026-11-11T09:00", insertedAt: "2026-11-10T09:00" };
  const none = { otherPatientId: 0, catheterId: 0, noteId: 0 };
  const about = { ...stay, ...none, wardId, toWardId, fresh, at: times.at };
  if (/merge/i.test(name)) {
    const other = await admit("2026-11-01T08:00");
    await ask(dischargePatient, { stayId: other.stayId, dischargedAt: "2026-11-02T08:00", seenVersion: 1 });
    about.otherPatientId = other.patientId;
  }
  if (/Catheter|Care|Urine|Note/.test(name)) {
    const insertion = { ...inputs.insertCatheter(about), insertedAt: times.insertedAt };
    about.catheterId = (await ask(insertCatheter, insertion)).catheterId;
    const review = { catheterId: about.catheterId, at: "2026-11-10T10:00", outcome: "ask" as const, remark: fresh() };
    about.noteId = (await ask(reviewCatheter, review)).noteId;
  }
  if (name === "cancelMove" || name === "voidWardStay") {
    const move = { stayId: stay.stayId, toWardId, movedAt: "2026-11-11T08:00" };
    about.wardStayId = (await ask(movePatient, move)).wardStayId;
  }
  return { about, input: await inputFor(ask, name, about) };
}

async function inputFor(ask: Ask, name: Name, about: Subjects): Promise<object> {
  const { stayId, patientId, otherPatientId: fromId } = about;
  if (name === "cancelDischarge") {
    const dischargedAt = "2026-11-12T09:00";
    const { version: seenVersion } = await ask(dischargePatient, { stayId, dischargedAt, seenVersion: 1 });
    return { stayId, reason, seenVersion } satisfies InputOf<typeof cancelDischarge>;
  }
  if (name === "unmergePatients") return { ...(await ask(mergePatients, { patientId, fromId })), patientId, reason };
  return inputs[name](about) as object;
}
