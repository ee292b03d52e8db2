import { z } from "zod";
import { type SignName, signName } from "../../shared/culture-words.ts";
import {
  matchOrganism,
  readCount,
  readTemperature,
  type Sign,
  type Specimen,
  type SurveillanceTimeline,
} from "../../src/domain/criteria/index.ts";
import { dayOf } from "./day-text.ts";

/** A sign of a case: a temperature in °C or the name of another. */
export interface CaseSign {
  readonly date: string;
  readonly sign: SignName;
  readonly celsius?: string;
}

/** What a case says of a patient; days as texts. */
export interface CasePatient {
  readonly wards: readonly { readonly ward: number; readonly from: string; readonly to: string | null }[];
  /** Wards from these places in the list on belong to a further stay. */
  readonly furtherStayAt?: number;
  readonly catheters?: readonly {
    readonly in: string;
    readonly out: string | null;
    readonly kind?: "suprapubic" | "ileal-conduit";
  }[];
  readonly urine: readonly { readonly date: string; readonly result: string }[];
  readonly blood?: readonly { readonly date: string; readonly organism: string }[];
  readonly signs: readonly CaseSign[];
  readonly ageYears?: number;
  readonly donorConsent?: string;
  readonly pyuriaOn?: string;
}

/**
 * The record of a case. Cases tell every sign that there was: all others were looked for and absent on the days of the
 * cultures. Where a case tells no age, the patient is 54.
 */
export function caseTimeline(patient: CasePatient): SurveillanceTimeline {
  const { wards, furtherStayAt = wards.length, urine, blood = [], signs, catheters = [], pyuriaOn } = patient;
  const parts = [wards.slice(0, furtherStayAt), wards.slice(furtherStayAt)].filter((part) => part.length > 0);
  const first = momentOf(wards[0]?.from ?? "").day;
  return {
    knownThrough: first + 120,
    birthDay: Math.floor(first - (patient.ageYears ?? 54) * 365.25 - 60),
    deathDay: null,
    donorSupportFrom: patient.donorConsent ? dayOf(patient.donorConsent) : null,
    stays: parts.map((part, i) => ({
      id: i + 1,
      admissionDay: momentOf(part[0]?.from ?? "").day,
      wardTimes: part.map(({ ward, from, to }) => ({
        wardId: ward,
        setting: "inpatient",
        start: momentOf(from),
        end: to === null ? null : momentOf(to),
      })),
      dischargeDay: part.at(-1)?.to ? momentOf(part.at(-1)?.to ?? "").day : null,
    })),
    catheters: catheters.map((one, i) => ({
      id: i + 1,
      kind: one.kind ?? "indwelling-urethral",
      start: momentOf(one.in),
      end: one.out === null ? null : momentOf(one.out),
      latestEndDay: null,
    })),
    specimens: [
      ...urine.map((one, i): Specimen => specimenOf("urine", i + 1, one.date, grownIn(one.result))),
      ...blood.map((one, i): Specimen => specimenOf("blood", i + 101, one.date, [[one.organism, null]])),
    ],
    signs: signsOf(signs, [...urine.map(({ date }) => date), ...(pyuriaOn ? [pyuriaOn] : [])]),
    findings: pyuriaOn ? [{ id: 1, finding: "pyuria", when: momentOf(pyuriaOn), present: true, cellsPerMm3: 12 }] : [],
  };
}

/** A day, with its instant where a time of day is told. */
function momentOf(text: string): { day: number; at: number | null } {
  return { day: dayOf(text.slice(0, 10)), at: text.length > 10 ? Date.parse(`${text}Z`) : null };
}

/** `E. coli >=100000, K. pneumoniae 50000 CFU/ml` as names and counts; remarks on the number of species are left out. */
function grownIn(result: string): [name: string, count: string][] {
  return result
    .replace(/, (single organism|one species)$/, "")
    .split(", ")
    .map((part) => {
      const found = /^(.*?) ((?:>=)?\d.*)$/.exec(part);
      if (!found) throw new Error(`the case grew something else: ${part}`);
      return [z.string().parse(found[1]), z.string().parse(found[2])];
    });
}

function specimenOf(
  kind: Specimen["kind"],
  id: number,
  date: string,
  grown: readonly (readonly [string, string | null])[],
): Specimen {
  const organisms = grown.map(([name, count], i) => {
    const identity = matchOrganism(name);
    if (!identity) throw new Error(`${name} is not on the list of organisms`);
    return { id: id * 10 + i, name, identity, count: readCount(count) };
  });
  return { id, kind, collected: momentOf(date), method: "culture", status: "final", organisms };
}

function signsOf(told: readonly CaseSign[], lookedOn: readonly string[]): Sign[] {
  const present = told.map(({ date, sign, celsius }, i): Sign => {
    const temperature = celsius === undefined ? null : readTemperature(celsius);
    return { id: i + 1, sign, when: momentOf(date), finding: "present", temperature, otherCause: false, review: null };
  });
  const absent = lookedOn.flatMap((date, i) =>
    signName.options.map((sign, j): Sign => {
      return {
        id: 1000 + i * 50 + j,
        sign,
        when: momentOf(date),
        finding: "absent",
        temperature: null,
        otherCause: false,
        review: null,
      };
    }),
  );
  return [...present, ...absent];
}
