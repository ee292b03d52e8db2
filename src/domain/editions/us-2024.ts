import { abuti } from "../criteria/abuti.ts";
import { afterDeath } from "../criteria/after-death.ts";
import { afterDischarge } from "../criteria/after-discharge.ts";
import { bloodstreamAttribution } from "../criteria/bloodstream-attribution.ts";
import { catheterEligibility } from "../criteria/catheter-eligibility.ts";
import { dateOfEvent } from "../criteria/date-of-event.ts";
import { donorSupport } from "../criteria/donor-support.ts";
import type { Edition, EditionOptions } from "../criteria/edition.ts";
import { infectionWindow } from "../criteria/infection-window.ts";
import { locationOfAttribution } from "../criteria/location-of-attribution.ts";
import { presentOnAdmission } from "../criteria/present-on-admission.ts";
import { readmission } from "../criteria/readmission.ts";
import { repeatTimeframe } from "../criteria/repeat-timeframe.ts";
import { chapter7, sinceUs2024 } from "../criteria/sources.ts";
import { suti1a } from "../criteria/suti-1a.ts";
import { suti1b } from "../criteria/suti-1b.ts";
import { suti2 } from "../criteria/suti-2.ts";
import { urineCulture } from "../criteria/urine-culture.ts";
import { usOpenPoints } from "./us-2024-open-points.ts";

const options: EditionOptions = {
  windowDays: 3,
  repeatDays: 14,
  catheterDaysFrom: "first-inpatient-day",
  absence: "restarts",
  yeastCountsAsSpecies: true,
  sameSpeciesTwice: "one-organism",
  abutiCommensals: true,
  costovertebralInInfants: false,
  urgencyOnRemovalDay: "after-removal",
  timeframeAcrossStays: false,
  elementInsideTimeframe: "no-new-event",
  bloodstreamPeriodFrom: "usable-window",
  readmission: "one-stay",
  infantAge: "completed-years",
  earlyFeverOver65: "not-usable",
  lookedFor: "any-day",
  undocumented: "no-element",
  afterDeath: "not-used",
};

/** The definitions of the United States as of January 2024. */
export const us2024: Edition = {
  id: "us-2024",
  title: "United States, CDC Patient Safety Component Manual, January 2024",
  source: chapter7,
  inForce: sinceUs2024,
  anchors: ["specimen"],
  otherCauseForAll: false,
  urgencyNeedsNoCatheter: true,
  feverNeedsCatheterFrom: 66,
  window: infectionWindow,
  culture: urineCulture,
  date: dateOfEvent,
  criteria: [suti1a, suti1b, suti2, abuti],
  onset: presentOnAdmission,
  device: catheterEligibility,
  repeat: repeatTimeframe,
  bloodstream: bloodstreamAttribution,
  attribution: locationOfAttribution,
  others: [afterDischarge, readmission, donorSupport, afterDeath],
  options,
  defaults: options,
  // The text says "up to 1 year of age"; completed years reach to the second birthday, further than any text that was read.
  changes: [{ option: "infantAge", value: "first-birthday" }],
  openPoints: usOpenPoints,
};
