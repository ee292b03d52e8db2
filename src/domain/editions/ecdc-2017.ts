import { afterDeath } from "../criteria/after-death.ts";
import { afterDischarge } from "../criteria/after-discharge.ts";
import { catheterSevenDays } from "../criteria/catheter-seven-days.ts";
import { dateOfOnset } from "../criteria/date-of-onset.ts";
import type { Edition, EditionOptions, OpenPoint } from "../criteria/edition.ts";
import { evidenceWindow } from "../criteria/evidence-window.ts";
import { infectionFromDay3 } from "../criteria/infection-from-day-3.ts";
import { locationOnOnset } from "../criteria/location-on-onset.ts";
import { readmission } from "../criteria/readmission.ts";
import { repeat14Days } from "../criteria/repeat-14-days.ts";
import { ecdcD1, sinceEcdc2017 } from "../criteria/sources.ts";
import { urineCultureAnyOrganism } from "../criteria/urine-culture-any-organism.ts";
import { utiA } from "../criteria/uti-a.ts";
import { utiB } from "../criteria/uti-b.ts";
import { us2024 } from "./us-2024.ts";
import { usOpenPoints } from "./us-2024-open-points.ts";

/** Readings that the two editions share, because the European texts leave the same open. */
const sharedPoints = ["sameSpeciesTwice", "lookedFor", "afterDeath", "yeastCountsAsSpecies"] as const;

/** A readmission within two days has a rule of its own, which needs the stays apart. */
const options: EditionOptions = { ...us2024.defaults, readmission: "own-stay" };

const undocumented: OpenPoint = {
  option: "undocumented",
  point: "A sign that the chart, read for the days around the culture, does not document",
  reading: "It is no sign; the answer holds for days up to the day on which the chart was read",
  why: "The surveys collect what charts document (from memory); the protocol's words on it were not read, the reading of the United States is taken",
  confidence: "medium",
  otherReading: "It is not known whether it was there, as if no one had looked",
  otherValues: ["not-known"],
};

/** The European definitions of 2017: UTI-A and UTI-B, with a catheter in the 7 days before onset. */
export const ecdc2017: Edition = {
  id: "ecdc-2017",
  title: "European Centre for Disease Prevention and Control, HAI-Net, 2017",
  source: ecdcD1,
  inForce: sinceEcdc2017,
  anchors: ["specimen", "finding"],
  otherCauseForAll: true,
  urgencyNeedsNoCatheter: false,
  feverNeedsCatheterFrom: null,
  window: evidenceWindow,
  culture: urineCultureAnyOrganism,
  date: dateOfOnset,
  criteria: [utiA, utiB],
  onset: infectionFromDay3,
  device: catheterSevenDays,
  repeat: repeat14Days,
  bloodstream: null,
  attribution: locationOnOnset,
  others: [afterDischarge, readmission, afterDeath],
  options,
  defaults: options,
  changes: [],
  openPoints: [
    ...usOpenPoints.filter(({ option }) => (sharedPoints as readonly string[]).includes(option)),
    undocumented,
    {
      option: "windowDays",
      point: "How many days may lie between the evidence of one infection",
      reading: "3",
      why: "The European definitions name no window; the one of the United States is taken",
      confidence: "low",
      otherReading: "Any other number of days; 1 and 7 are tried",
      otherValues: [1, 7],
    },
    {
      option: "repeatDays",
      point: "When a further infection is another one",
      reading: "After 14 days",
      why: "The protocol's rule was not read; the one of the United States is taken",
      confidence: "low",
      otherReading: "Any other number of days; 7 and 30 are tried",
      otherValues: [7, 30],
    },
    {
      option: "readmission",
      point: "Discharge and readmission within a day",
      reading: "Each stay is its own",
      why: "A readmission within two days has a rule of its own, which needs the stays apart",
      confidence: "low",
      otherReading: "One admission when no full day is between",
      otherValues: ["one-stay"],
    },
  ],
};
