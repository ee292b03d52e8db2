/**
 * Which urine cultures are infections by published definitions: the public face of this room. Build a
 * `SurveillanceTimeline` of everything known about a patient (stays and catheters through `recordedWay`, organisms
 * through `matchOrganism` or `chosenOrganism`, counts through `readCount`, temperatures through `readTemperature`) and
 * ask `determineWithHinges(timeline, edition)`, or `determine` where other readings do not matter.
 */

export { completedMonths } from "./age.ts";
export type { DayRange, Determination, Evidence, Hinge, Step, Subject, SurveillanceEvent } from "./determination.ts";
export { restsOnFewTemperatures } from "./determination.ts";
export { determine, summaryOf } from "./determine.ts";
export { changedDeterminations, type Difference, differenceBetween } from "./difference.ts";
export { type Edition, type EditionOptions, type OpenPoint, type ReadingChange, rulesOf } from "./edition.ts";
export { determineWithHinges } from "./hinges.ts";
export {
  listedOrganisms,
  matchOrganism,
  otherKnownNames,
  proposedOrganism,
  sameOrganism,
  saysNoGrowth,
} from "./match-organism.ts";
export { chosenOrganism, type OrganismIdentity } from "./organism.ts";
export { type PossibleLocation, possibleLocations } from "./possible-locations.ts";
export { countText, type ReadCount, reaches, readCount } from "./read-count.ts";
export { recordedWay, type WayRules } from "./recorded-way.ts";
export { type Example, type Rule, type RuleId, ruleIds, type Source, sourceText } from "./rule.ts";
export { timelineOf } from "./story.ts";
export { storyWords } from "./story-words.ts";
export { bySubject } from "./subject-order.ts";
export type {
  CatheterTime,
  FindingInUrine,
  GrownOrganism,
  Moment,
  Sign,
  Specimen,
  SurveillanceStay,
  SurveillanceTimeline,
  WardTime,
} from "./surveillance-timeline.ts";
export { readTemperature, type Temperature, temperatureText } from "./temperature.ts";
