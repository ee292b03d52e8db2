import type { OrganismGroup } from "../../../shared/culture-words.ts";

/** What a wording that names no genus says: a group, under the name by which two such reports are compared. */
export interface WordingClass {
  readonly key: string;
  readonly group: OrganismGroup;
}

const set = (words: string): ReadonlySet<string> => new Set(words.split(/\s+/));

/** Where flora comes from and how it is described. */
const floraWords = set(
  "mixed normal usual common skin urogenital genitourinary genital genitalia external gu perineal perianal perirectal rectal vaginal fecal faecal stool enteric intestinal bowel gi urethral periurethral meatal colonizing contaminating contaminated contaminants contaminant contamination contaminate commensal resident indigenous endogenous cutaneous oral respiratory gram positive negative variable bacterial bacteria microbial aerobic anaerobic flora microflora microbiota growth grown culture organisms organism species colony morphotypes morphotype morphologies types type isolates microorganisms rods cocci bacilli uropathogens pathogens different distinct varieties kinds strains multiple various several polymicrobial and or of with the a only including yeast yeasts predominantly predominant present noted seen isolated probable probably likely possible possibly suggestive suggesting suggests suggest indicates indicating indicative consistent specimen sample urine collected improperly collection recollection recollect repeat repeated please submit resubmit new another recommend recommended advise advised if clinically indicated clean catch midstream is are due to by from in on reflux site tract lower distal numerous many heavy moderate light few greater more than equal or at least none appropriate appropriately properly aseptic technique doubtful uncertain unknown questionable significance",
);
const many = set("mixed multiple various several polymicrobial");
const kinds = set(
  "organisms species bacteria morphotypes morphotype morphologies types growth culture isolates microorganisms rods cocci bacilli uropathogens pathogens varieties kinds bacterial flora",
);
const contaminated = set("contaminated contamination contaminants");
/** More than two kinds cannot be used, whatever they are. */
const mixedFrom = 3;
const numbers = "one two three four five six seven eight nine ten".split(" ");
const several =
  /^(>=|=>|≥|>|at least |more than |greater than |over )? ?(\d{1,2}|one|two|three|four|five|six|seven|eight|nine|ten)( (or|and) (more|greater)| plus| \+)? (?=[a-z])/;

/** A report that says that nothing grew, with how long the laboratory waited. Common practice, from memory. */
const noGrowth =
  /^(final |prelim(inary)? |report |result )*((urine|blood|routine|aerobic|bacterial) )?(culture )?((is |was )?((no|nil|zero|0) (bacterial |microbial )?growth( (detected|observed|seen|noted|obtained|present|found|occurred))?|no (organisms?|bacteria|microorganisms?|isolates?|colonies) (was |were )?(isolated|grown|recovered|grew|cultured)|none isolated|nothing grew|negative( for growth)?|neg|sterile|ngtd|ng)|growth none)( (urine|culture|at|after|in|for|x|@|to|by|on|of incubation|\d{1,3}|\d{1,3} ?(h|hrs?|hours?|d|days?)|h|hrs?|hours?|days?|day|overnight|incubation|final|date|so|far|yet|as|prelim|preliminary|report|result|of bacteria))*$/;

const notThis =
  "( (presumptively |presumptive )?(not|non|other than) (candida|c|cryptococcus)( (albicans|neoformans|auris))?( species| spp| sp)?)?";
const yeast = new RegExp(
  `^(budding |germ tube (negative|positive) )?((non albicans )?yeasts?( like)?( (cells|forms|fungus|organisms?))?)( (species|spp|sp|isolated|present|seen|germ tube (negative|positive)|unidentified|not further identified))*${notThis}$`,
);
const mold =
  /^((filamentous|dimorphic|saprophytic) )?(molds?|moulds?|fungus|fungi|fungal elements)( (species|isolated|present|unidentified))*$/;
const candidaNotAlbicans =
  /^(non albicans candida|candida( species| spp| sp)?( presumptively)? (non|not|other than)( candida| c)? albicans)( species| spp| sp)?$/;

const grams: Readonly<Record<string, string>> = {
  gnr: "gram negative rods",
  gnb: "gram negative rods",
  gpr: "gram positive rods",
  gpb: "gram positive rods",
  gpc: "gram positive cocci",
  gnc: "gram negative cocci",
  gncb: "gram negative coccobacilli",
};
const gram =
  /^(aerobic |anaerobic |enteric |curved |unidentified |(late )?lactose ferment(ing|er) |(non|not) (lactose )?ferment(ing|er|ative) |oxidase (positive|negative) )*gram (positive|negative|variable) (rods?|bacillus|bacilli|cocci|coccus|coccobacilli|coccobacillus|diplococci|bacteria|bacterium|organism)( (in )?(pairs|chains|clusters|pairs and chains)| unidentified| isolated| not (pseudomonas|p)( aeruginosa)?| (non )?(lactose )?ferment(ing|er)| oxidase (positive|negative)| # ?\d)*$/;
const bacteria =
  /^((lactose |(late )?lactose )?ferment(er|ing)s?|non (lactose )?ferment(er|ing|ers|ative)( (bacilli|rods))?( not (pseudomonas|p)( aeruginosa)?)?|coliforms?( (bacilli|bacillus|bacteria))?|enteric (bacilli|rods)|enterobacteriaceae|enterobacterales|anaerobes?|anaerobic bacteria|acid fast bacilli|afb|esbl( (producer|producing (organism|bacteria)))?|cre|cpe|cpo|kpc|group d streptococc(us|i)|streptococc(us|i) group d)$/;

/**
 * The class of a plain wording without a genus; null for what is not certain, which waits for a person. Flora of any kind
 * makes a urine specimen unusable: CDC, frequently asked questions on urinary tract infection (perineal, vaginal and
 * normal flora: from memory). "No significant growth" is no class: laboratories write it for few colonies of something,
 * and below another limit each. What has both a class and anything unknown beside it is no class either.
 */
export function classOf(text: string): WordingClass | null {
  if (isMixed(text)) return { key: text, group: "mixed-flora" };
  if (noGrowth.test(text)) return { key: "no growth", group: "no-growth" };
  if (candidaNotAlbicans.test(text)) return { key: "Candida", group: "yeast-or-mold" };
  if (yeast.test(text)) return { key: "yeast", group: "yeast-or-mold" };
  if (mold.test(text)) return { key: "mold", group: "yeast-or-mold" };
  const [first = "", ...others] = text.split(" ");
  const spelled = [grams[first] ?? first, ...others].join(" ");
  const stain = gram.test(spelled) ? spelled : null;
  if (stain !== null)
    return { key: stain.replace(/\b(bacillus|bacilli|rod)\b/, "rods").replace("coccus", "cocci"), group: "bacterium" };
  return bacteria.test(text) ? { key: text, group: "bacterium" } : null;
}

/** More than two kinds, flora, or contamination, and no other word beside them. */
function isMixed(text: string): boolean {
  const said = text
    .replace(
      /\bno (one )?(single )?(predominant|predominating|dominant) \w+|\bnone (predominat(es|ing)|predominant)|^growth of |\bno further \w+( \w+)?$/g,
      " ",
    )
    .replace(/[()[\]/&]/g, " ")
    .trim();
  const [counted, sign = "", number = ""] = several.exec(said) ?? [];
  const rest = (counted === undefined ? said : said.slice(counted.length)).split(/\s+/);
  const isThreeOrMore = (word: string) => (Number(word) || numbers.indexOf(word) + 1) >= mixedFrom;
  if (rest.some((word) => !floraWords.has(word) && !isThreeOrMore(word))) return false;
  const has = (words: ReadonlySet<string>) => rest.some((word) => words.has(word));
  const isDoubtful = rest.includes("possible") || rest.includes("possibly");
  const isContaminated = has(contaminated) && !isDoubtful;
  if (counted !== undefined) {
    const least =
      (Number(number) || numbers.indexOf(number) + 1) + (/^(>|more|greater|over)/.test(sign) && sign !== ">=" ? 1 : 0);
    return has(kinds) && (least >= mixedFrom || isContaminated);
  }
  if (rest.some((word) => /flora|microbiota/.test(word))) return true;
  // Several yeasts are no flora: European definitions take yeasts as pathogens.
  if (rest.some((word) => word.startsWith("yeast"))) return false;
  if (rest.includes("polymicrobial")) return true;
  return (has(many) && has(kinds)) || (isContaminated && !rest.includes("organism"));
}
