import type {
  SignFinding,
  SignName,
  SpecimenKind,
  SpecimenMethod,
  SpecimenStatus,
  UrineFinding,
} from "../../../shared/culture-words.ts";
import type { CatheterKind, WardSetting } from "../../../shared/vocabulary.ts";
import type { DayNumber, Instant } from "../days/day-number.ts";
import type { OrganismIdentity } from "./organism.ts";
import type { ReadCount } from "./read-count.ts";
import type { Temperature } from "./temperature.ts";

/** A facility day, and the instant on it where that is known. Definitions work on days; instants only order a day. */
export interface Moment {
  readonly day: DayNumber;
  readonly at: Instant | null;
}

/** Time of a stay in one place with one setting. A bed that is held during a procedure is time on its ward. */
export interface WardTime {
  readonly wardId: number;
  /** null: nobody has said what the ward is. */
  readonly setting: WardSetting | null;
  readonly start: Moment;
  /** The last day touched, and the instant of leaving; null while the patient is there. */
  readonly end: Moment | null;
}

export interface SurveillanceStay {
  readonly id: number;
  /** The day of admission, which may be before the first ward time. */
  readonly admissionDay: DayNumber;
  readonly wardTimes: readonly WardTime[];
  /** The day of discharge; null while the stay lasts. */
  readonly dischargeDay: DayNumber | null;
}

/** When a catheter came out. */
export interface Removal extends Moment {
  /** Where the instant is not known: still in place at `after`, and gone at `before`. */
  readonly between?: { readonly after: Instant; readonly before: Instant };
}

export interface CatheterTime {
  readonly id: number;
  readonly kind: CatheterKind;
  /** null: in place on arrival, nobody knows since when. */
  readonly start: Moment | null;
  /** The last day on which it was known to be in place, and the instant of removal; null while it is in place. */
  readonly end: Removal | null;
  /** Where not even the day of removal is known: the last day on which it may still have been in place. */
  readonly latestEndDay: DayNumber | null;
}

export interface GrownOrganism {
  readonly id: number;
  /** As the laboratory wrote it. */
  readonly name: string;
  readonly identity: OrganismIdentity;
  readonly count: ReadCount;
}

export interface Specimen {
  readonly id: number;
  readonly kind: SpecimenKind;
  readonly collected: Moment;
  readonly method: SpecimenMethod;
  readonly status: SpecimenStatus;
  /** Empty in a final report: no growth. */
  readonly organisms: readonly GrownOrganism[];
}

export interface Sign {
  readonly id: number;
  readonly sign: SignName;
  readonly when: Moment;
  readonly finding: SignFinding;
  /** Of the sign `temperature` alone. */
  readonly temperature: Temperature | null;
  /** Another cause of it was recognized. */
  readonly otherCause: boolean;
  /** Of the finding `not-documented` alone: the chart was read on `readDay` for the days from `when` to `lastDay`. */
  readonly review: { readonly lastDay: DayNumber; readonly readDay: DayNumber } | null;
}

/** Evidence beside a culture, as European definitions take it. */
export interface FindingInUrine {
  readonly id: number;
  readonly finding: UrineFinding;
  readonly when: Moment;
  readonly present: boolean;
  /** White blood cells per mm³, for pyuria where a number was given. */
  readonly cellsPerMm3: number | null;
}

/** Everything about one patient that decides a determination, over all stays in the facility. Lists in any order. */
export interface SurveillanceTimeline {
  /** The last facility day of which the record can know anything: the day of the question. */
  readonly knownThrough: DayNumber;
  readonly birthDay: DayNumber | null;
  readonly deathDay: DayNumber | null;
  /** From when the patient was supported for organ donation after documented consent. */
  readonly donorSupportFrom: DayNumber | null;
  readonly stays: readonly SurveillanceStay[];
  readonly catheters: readonly CatheterTime[];
  readonly specimens: readonly Specimen[];
  readonly signs: readonly Sign[];
  readonly findings: readonly FindingInUrine[];
}
