import type { Story, StorySign, StorySpecimen } from "../../../../src/domain/criteria/story.ts";
import { coli, reviewed } from "./grown.ts";

type Finding = NonNullable<Story["findings"]>[number];
const few = [["Escherichia coli", "1000"]] as const;
const fever: StorySign = { day: 10, sign: "38.4" };
const urgency: StorySign = { day: 11, sign: "urgency" };
const signs = [fever, urgency];
const found = (...findings: Finding[]): Story => ({ findings, signs });
const grew = (...urine: StorySpecimen[]): Story => ({ urine, signs });

/** UTI-A and UTI-B. */
export const european: Readonly<Record<string, Story>> = {
  "a culture and a sign that comes later": { urine: [{ day: 10, grew: coli }], signs: [urgency] },
  "a culture and dysuria with a catheter in place": {
    urine: [{ day: 10, grew: coli }],
    catheters: [[2, null]],
    signs: [{ day: 9, sign: "dysuria" }],
  },
  "other causes of every sign": {
    urine: [{ day: 10, grew: coli }],
    signs: [
      { ...fever, otherCause: true },
      { ...urgency, otherCause: true },
      { day: 9, sign: "suprapubic-tenderness", otherCause: true },
    ],
  },
  "a temperature without a value, of another cause": {
    urine: [{ day: 10, grew: coli }],
    signs: [{ day: 10, sign: "temperature", otherCause: true }],
  },
  "a yeast counts": { urine: [{ day: 10, grew: [["Candida albicans", "10^5"]] }], signs: [fever] },
  "costovertebral pain is no sign": {
    urine: [{ day: 10, grew: coli }],
    signs: [{ day: 10, sign: "costovertebral-pain" }],
  },
  "a dipstick and two signs": found([9, "leukocyte-esterase-or-nitrite"]),
  "a parasite counts": { urine: [{ day: 10, grew: [["Trichomonas vaginalis", "10^5"]] }], signs: [fever] },
  "pyuria, one sign, and one that is none": {
    ...found([10, "pyuria"]),
    signs: [fever, { day: 10, sign: "costovertebral-pain" }],
  },
  "pyuria and one sign while the window is open": { ...found([10, "pyuria"]), signs: [fever], knownThrough: 11 },
  "pyuria on the last day that is known": { ...found([11, "pyuria"]), knownThrough: 11 },
  "pyuria without a sign, all but fever looked for": {
    findings: [[10, "pyuria"]],
    lookedFor: false,
    signs: (["urgency", "frequency", "dysuria", "suprapubic-tenderness"] as const).map((sign) => ({
      day: 10,
      sign,
      finding: "absent",
    })),
  },
  "a Gram stain on the first day of a culture's window": {
    ...grew({ day: 10, grew: few }),
    findings: [[7, "gram-stain"]],
  },
  "a Gram stain on the last day of a culture's window": {
    ...grew({ day: 10, grew: few }),
    findings: [[13, "gram-stain"]],
  },
  "a Gram stain outside of a culture's window": { ...grew({ day: 10, grew: few }), findings: [[20, "gram-stain"]] },
  "the same uropathogen in blood": { ...grew({ day: 10, grew: few }), blood: [{ day: 10, grew: few }] },
  "the same uropathogen by a test that is no culture": grew(
    { day: 9, grew: few },
    { day: 10, grew: few, method: "non-culture-test" },
  ),
  "many of one uropathogen under treatment": {
    ...grew({ day: 10, grew: coli }),
    findings: [[9, "effective-antimicrobial"]],
  },
  "100,000 of one uropathogen under treatment": {
    ...grew({ day: 10, grew: [["E. coli", "100000"]] }),
    findings: [[9, "effective-antimicrobial"]],
  },
  "after discharge, three species and pyuria": {
    wards: [[1, 1, 8]],
    urine: [{ day: 10, grew: [...coli, ["K. pneumoniae", "1000"], ["E. faecalis", "1000"]] }],
    findings: [[10, "pyuria"]],
    signs,
  },
  "pyuria and one sign, the others looked for": { ...found([10, "pyuria"]), signs: [fever] },
  "pyuria and one sign, nobody looked for others": { ...found([10, "pyuria"]), signs: [fever], lookedFor: false },
  "pyuria and dysuria of an old patient without a catheter, everything looked for but fever": {
    ageYears: 80,
    findings: [[10, "pyuria"]],
    lookedFor: false,
    signs: [
      { day: 10, sign: "dysuria" },
      ...(["urgency", "frequency", "suprapubic-tenderness"] as const).map(
        (sign): StorySign => ({ day: 10, sign, finding: "absent" }),
      ),
    ],
  },
  "pyuria, nobody looked for signs": { ...found([10, "pyuria"]), signs: [], lookedFor: false },
  "treatment alone supports nothing": found([10, "effective-antimicrobial"]),
  "a finding after the last day that is known": { ...found([10, "pyuria"]), knownThrough: 9 },
  "few of one uropathogen under treatment": {
    ...grew({ day: 10, grew: few }),
    findings: [[9, "effective-antimicrobial"]],
  },
  "few of two species under treatment": {
    ...grew({ day: 10, grew: [...few, ["Klebsiella pneumoniae", "1000"]] }),
    findings: [[9, "effective-antimicrobial"]],
  },
  "few of one uropathogen without treatment": grew({ day: 10, grew: few }),
  "few of a bacterium that is no uropathogen under treatment": {
    ...grew({ day: 10, grew: [["Enterococcus faecalis", "1000"]] }),
    findings: [[9, "effective-antimicrobial"]],
  },
  "the same uropathogen in two cultures": grew({ day: 9, grew: few }, { day: 11, grew: few }),
  "the same uropathogen, once too few": grew({ day: 9, grew: few }, { day: 11, grew: [["E. coli", "99"]] }),
  "two uropathogens in two cultures": grew({ day: 9, grew: few }, { day: 11, grew: [["P. mirabilis", "1000"]] }),
  "the same uropathogen in two cultures a week apart": grew({ day: 9, grew: few }, { day: 16, grew: few }),
  "the other culture of the uropathogen is preliminary": grew(
    { day: 9, grew: few },
    { day: 11, grew: few, status: "preliminary" },
  ),
  "the other culture of the uropathogen has no count": grew(
    { day: 9, grew: few },
    { day: 11, grew: [["E. coli", "heavy growth"]] },
  ),
  "the other culture grew another uropathogen, without a count": grew(
    { day: 9, grew: few },
    { day: 11, grew: [["Proteus mirabilis", "heavy growth"]] },
  ),
  "the other culture grew what nobody has named": grew(
    { day: 9, grew: few },
    { day: 11, grew: [["something rare", "1000"]] },
  ),
  "the genus in one culture and its species in the other": grew(
    { day: 9, grew: [["Klebsiella species", "1000"]] },
    { day: 11, grew: [["Klebsiella pneumoniae", "1000"]] },
  ),
  "one pending culture and nothing else that could be repeated": grew(
    { day: 9, grew: [["Enterococcus faecalis", "1000"]] },
    { day: 11, status: "pending" },
  ),
  "treatment and a pending culture": {
    ...grew({ day: 10, status: "pending" }),
    findings: [[9, "effective-antimicrobial"]],
  },
  "treatment and a culture without a count": {
    ...grew({ day: 10, grew: [["E. coli", "heavy growth"]] }),
    findings: [[9, "effective-antimicrobial"]],
  },
  "treatment and Gram-negative rods": {
    ...grew({ day: 10, grew: [["Gram-negative rods", "1000"]] }),
    findings: [[9, "effective-antimicrobial"]],
  },
  "a pending culture, repeated perhaps, and one sign": {
    ...grew({ day: 9, grew: few }, { day: 11, status: "pending" }),
    signs: [fever],
  },
  "a withdrawn second culture": grew({ day: 9, grew: few }, { day: 11, grew: few, status: "withdrawn" }),
  "repeated, one sign, and nobody looked for others": {
    ...grew({ day: 9, grew: few }, { day: 11, grew: few }),
    signs: [fever],
    lookedFor: false,
  },
  "chart reviewed after all days, nothing documented": {
    urine: [{ day: 10, grew: coli }],
    signs: reviewed({ day: 7, through: 13, read: 14 }),
    lookedFor: false,
  },
  "chart reviewed too early, pyuria and fever": {
    findings: [[10, "pyuria"]],
    signs: [fever, ...reviewed({ day: 7, through: 13, read: 12 })],
    lookedFor: false,
  },
  "chart reviewed after all days, pyuria and fever alone": {
    findings: [[10, "pyuria"]],
    signs: [fever, ...reviewed({ day: 7, through: 13, read: 13 })],
    lookedFor: false,
  },
  "a finding and a culture of one infection": { urine: [{ day: 10, grew: coli }], findings: [[10, "pyuria"]], signs },
  "three species, and pyuria": {
    urine: [{ day: 10, grew: [...coli, ["K. pneumoniae", "1000"], ["E. faecalis", "1000"]] }],
    findings: [[10, "pyuria"]],
    signs,
  },
};
