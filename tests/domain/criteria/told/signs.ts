import type { Story, StorySign } from "../../../../src/domain/criteria/story.ts";
import { coli, reviewed, since2 } from "./grown.ts";

const urine = [{ day: 10, grew: coli }] as const;
const cultureOnly = (...signs: StorySign[]): Story => ({ urine, signs });
const withCatheter = (...signs: StorySign[]): Story => ({ urine, catheters: since2, signs });
const old = (story: Story): Story => ({ ...story, ageYears: 70 });
const infant = (story: Story): Story => ({ ...story, ageYears: 0 });

/** Which signs count, and what is said of those that do not. */
export const signs: Readonly<Record<string, Story>> = {
  "fever on the first day of the window, dysuria later": cultureOnly(
    { day: 12, sign: "dysuria" },
    { day: 7, sign: "38.1" },
  ),
  "fever and tenderness of one day": withCatheter({ day: 9, sign: "suprapubic-tenderness" }, { day: 9, sign: "38.6" }),
  "a sign on the last day of the window": cultureOnly({ day: 13, sign: "frequency" }),
  "a sign the day before the window": cultureOnly({ day: 6, sign: "frequency" }),
  "a sign two days after the window": cultureOnly({ day: 15, sign: "39.0" }),
  "signs on both sides of the window, equally far": cultureOnly(
    { day: 15, sign: "urgency" },
    { day: 5, sign: "dysuria" },
  ),
  "signs on both sides of the window, the later nearer": cultureOnly(
    { day: 3, sign: "urgency" },
    { day: 14, sign: "costovertebral-pain" },
  ),
  "far signs that do not count: absent, not of the list, no fever": cultureOnly(
    { day: 5, sign: "dysuria", finding: "absent" },
    { day: 6, sign: "vomiting" },
    { day: 14, sign: "37.5" },
    { day: 15, sign: "temperature" },
    { day: 6, sign: "35.0" },
  ),
  "a far sign that counts, behind others that do not": cultureOnly(
    { day: 6, sign: "vomiting" },
    { day: 14, sign: "37.0" },
    { day: 15, sign: "dysuria" },
  ),
  "everything was looked for but fever": {
    ...cultureOnly(
      ...(["suprapubic-tenderness", "costovertebral-pain", "urgency", "frequency", "dysuria"] as const).map(
        (sign): StorySign => ({ day: 10, sign, finding: "absent" }),
      ),
    ),
    lookedFor: false,
  },
  "38.0 and 36.0 °C": cultureOnly({ day: 10, sign: "38.0" }, { day: 11, sign: "36.0" }),
  "100.4 and 100.5 °F": withCatheter({ day: 10, sign: "100.4 F" }, { day: 11, sign: "100.5 F" }),
  "a temperature of the other unit": withCatheter({ day: 10, sign: "100.5" }),
  "a temperature without a value, beside another sign": withCatheter(
    { day: 9, sign: "temperature" },
    { day: 10, sign: "costovertebral-pain" },
  ),
  "other causes: of tenderness and pain": withCatheter(
    { day: 9, sign: "costovertebral-pain", otherCause: true },
    { day: 10, sign: "suprapubic-tenderness", otherCause: true },
  ),
  "other causes: of fever": withCatheter({ day: 10, sign: "38.5", otherCause: true }),
  "other causes: of dysuria without a catheter": cultureOnly({ day: 10, sign: "dysuria", otherCause: true }),
  "signs that somebody looked for and did not find": {
    ...cultureOnly(
      { day: 10, sign: "37.0", finding: "absent" },
      { day: 9, sign: "dysuria", finding: "absent" },
      { day: 8, sign: "urgency", finding: "not-recorded" },
    ),
    lookedFor: false,
  },
  "nobody looked for anything, catheter in place": { ...withCatheter(), lookedFor: false },
  "nobody looked for anything, an infant": { ...infant(cultureOnly()), lookedFor: false },
  "nobody looked for anything, an old patient": { ...old(cultureOnly()), lookedFor: false },
  "nobody looked for anything, an old patient with a catheter": { ...old(withCatheter()), lookedFor: false },
  "nobody looked for anything, an old patient with a catheter since three days": {
    ...old(cultureOnly()),
    catheters: [[8, null]],
    lookedFor: false,
  },
  "chart reviewed after the window, nothing documented": {
    ...withCatheter(...reviewed({ day: 7, through: 13, read: 14 })),
    lookedFor: false,
  },
  "chart reviewed after the window, nothing documented, blood grew the same": {
    ...withCatheter(...reviewed({ day: 7, through: 13, read: 14 })),
    blood: [{ day: 11, grew: coli }],
    lookedFor: false,
  },
  "chart reviewed on the day of the culture: later days are open": {
    ...withCatheter(...reviewed({ day: 7, through: 13, read: 10 })),
    lookedFor: false,
  },
  "chart reviewed twice, for the days up to the first reading and after it": {
    ...withCatheter(...reviewed({ day: 7, through: 10, read: 10 }), ...reviewed({ day: 11, through: 13, read: 15 })),
    lookedFor: false,
  },
  "chart reviewed for one sign, the others looked for": withCatheter({
    day: 7,
    sign: "suprapubic-tenderness",
    finding: "not-documented",
    through: 13,
    read: 14,
  }),
  "chart reviewed, an undocumented sign beside a documented one": {
    ...withCatheter(...reviewed({ day: 7, through: 13, read: 14 }), { day: 12, sign: "38.5" }),
    lookedFor: false,
  },
  "chart reviewed of an infant up to the last day": {
    ...infant(cultureOnly(...reviewed({ day: 7, through: 13, read: 13 }))),
    lookedFor: false,
  },
  "chills and hypotension are no signs of it": withCatheter(
    { day: 10, sign: "chills" },
    { day: 11, sign: "hypotension" },
  ),
  "the window is open": { ...withCatheter(), knownThrough: 12 },
  "the window closes today": { ...withCatheter(), knownThrough: 13 },
  "death before the window closes": { ...withCatheter({ day: 12, sign: "38.5" }), died: 11, knownThrough: 12 },
  "a sign on the day of death": { ...withCatheter({ day: 11, sign: "38.5" }), died: 11 },
  "old, fever without a catheter": old(cultureOnly({ day: 10, sign: "38.5" })),
  "old, fever and dysuria without a catheter": old(cultureOnly({ day: 9, sign: "38.5" }, { day: 11, sign: "dysuria" })),
  "old, fever on catheter day 2 and later": old({
    ...cultureOnly({ day: 9, sign: "38.5" }, { day: 11, sign: "38.7" }),
    catheters: [[8, null]],
  }),
  "old, fever on catheter day 2 alone": old({ ...cultureOnly({ day: 9, sign: "38.5" }), catheters: [[8, null]] }),
  "old, dysuria before the catheter, fever with it": old({
    ...cultureOnly({ day: 7, sign: "dysuria" }, { day: 10, sign: "38.5" }),
    catheters: [[8, null]],
  }),
  "old, fever with a catheter": old(withCatheter({ day: 11, sign: "38.5" })),
  "an infant with hypothermia": infant(cultureOnly({ day: 8, sign: "35.9" }, { day: 9, sign: "lethargy" })),
  "an infant with bradycardia that has another cause": infant(
    cultureOnly({ day: 9, sign: "bradycardia", otherCause: true }),
  ),
  "an infant with costovertebral pain": infant(cultureOnly({ day: 9, sign: "costovertebral-pain" })),
  "a child of two years with apnea": { ...cultureOnly({ day: 9, sign: "apnea" }), ageYears: 2 },
};
