/** Resistance and other properties that laboratories write beside a name and that change no identity. */
const properties = [
  "(esbl|amp ?c|cre|cpe|cpo|crab|crpa|kpc|ndm( \\d)?|oxa ?\\d{2,3}|vim|mdro?|xdr|mrsa|mssa|mrse|visa|vrsa|vre|vse|hlgr|d test|3gcr)",
  "(extended spectrum )?beta lactamase",
  "(multi ?(drug )?|multiple drug |carbapenem |vancomycin |methicillin |oxacillin |ampicillin |penicillin |cephalosporin |ceftriaxone |fluoroquinolone |cipro(floxacin)? |gentamicin |imipenem |meropenem |ertapenem |trimethoprim |colistin )(resistant|resistance|susceptible|sensitive|intermediate)",
  "carbapenemase",
  "(beta|alpha|gamma|non)? ?hemolytic",
  "(late |non )?(lactose ferment(ing|er))|nlf|lf",
  "mucoid",
].join("|");
const properly = `(not )?(${properties})( (producer|producing|producers|positive|pos|negative|neg|detected|screen|isolate|strain|type|\\+))*`;
const sureness =
  "(presumptive(ly)?|presumed|presump|probable|probably|prob|likely)( identification| identified| id| ident)?( of| as)?";
const amount =
  "(pure|predominantly|predominant|(very )?(heavy|moderate|light|scant|scanty|sparse|few|many|rare|abundant|profuse|numerous))( (pure )?(growth|culture|numbers?|amounts?|quantity|colonies))?( of)?|(growth|culture|colonies) of";
const place =
  "(isolate|organism|org|bacteria|result)? ?#? ?\\d( \\))?|(isolate|organism|org|final|identified|identified as|id)";
const prefix = new RegExp(`^(${sureness}|${amount}|${properly}|${place}) (?=\\S)`);

const rank =
  "(sub ?species|subsp|ssp|ss|variety|var|variant|biovar|biotype|bio|biogroup|serovar|serotype|serogroup|sv|genomospecies|genomovar) [a-z0-9]+( [a-z0-9]+)?|(type|(lancefield )?group) [a-g]";
const unnamed =
  "species|spp|sp|ssp|nos|not otherwise specified|(not|no|unable to be) (further )?(identified|speciated|specified|classified|identification|speciation|work ?up)( further)?|unspecified|unspeciated|unidentified( species)?|undetermined";
const kind = "complex|cplx|cmplx|cpx|group|grp|gp";
const order =
  "(#|no|x)? ?\\d|\\d (strains|morphotypes|colony types|biotypes)|(1st|2nd|3rd|first|second|third|another|different) (strain|isolate|morphotype|colony type|morphology)";
const how =
  "by maldi( tof)?( ms)?|(prelim|preliminary|final|confirmed)( identification| id| result| report)?|isolated|present|isolate|strain|grown|detected";
const antigen = "o ?\\d{1,3}( h ?\\d{1,2})?";
const suffix = new RegExp(
  ` (${sureness}|${properly}|${rank}|${unnamed}|${kind}|${order}|${how}|${antigen}|coag(ulase)? (\\+|positive|pos))$`,
);

const harmless = new RegExp(`^(${properly}|${sureness}|${unnamed}|${how})$`);

/** Words in brackets that may turn a name into something else. */
const turning =
  /\b(not?|non|none|rule|ruled|r\/o|mixed|multiple|flora|contam\w*|growth|versus|vs|or|and|with|plus|possible|possibly|suspected|question\w*|unlikely|negative|pending|normal)\b|[?+/&]/;

/**
 * A plain wording with its brackets resolved: those that say how it was found, what it resists or its older name are left
 * out. null where a bracket may turn the name into something else, so that a person decides.
 */
export function withoutBrackets(text: string): string | null {
  const inner = [...text.matchAll(/[([]([^)\]]*)[)\]]/g)].map(([, words = ""]) => words.trim());
  const isSaid = (words: string) => harmless.test(words);
  if (inner.some((words) => turning.test(words) && !isSaid(words))) return null;
  const bare = text.replace(/[([][^)\]]*[)\]]/g, " ");
  return /[()[\]]/.test(bare) ? null : bare.replace(/\s+/g, " ").trim();
}

/** A plain wording without what says how sure, how much, which strain or how resistant. */
export function withoutQualifiers(text: string): string {
  const once = text.replace(prefix, "").replace(suffix, "").trim();
  return once === text || once === "" ? text : withoutQualifiers(once);
}
