import { signName } from "../../shared/culture-words.ts";
import { dayMs, type Instant } from "../domain/days/day-number.ts";
import type { Zone } from "../domain/days/zone.ts";
import { decideCase } from "../usecases/cultures/decide-case.ts";
import type { GivenSign } from "../usecases/cultures/given-signs.ts";
import { recordSigns } from "../usecases/cultures/record-signs.ts";
import { recordSpecimen } from "../usecases/cultures/record-specimen.ts";
import type { DemoCulture, SignsFound } from "./draw-cultures.ts";
import type { Recorder } from "./record-recent.ts";

const hourMs = 3_600_000;
/** When a laboratory has reported, and when somebody has looked at it. */
const reportedAfter = 2 * dayMs;
const decidedAfter = 5 * dayMs;

/** What somebody did, and when. */
interface Done {
  readonly at: Instant;
  readonly step: () => Promise<void>;
}

/** Records cultures with the signs of their days, and what was decided about them, in the order of time. */
export async function recordCultures(
  recorder: Recorder,
  cultures: readonly DemoCulture[],
  { zone, now }: { readonly zone: Zone; readonly now: Instant },
): Promise<void> {
  const steps = cultures.flatMap((culture) => stepsOf(recorder, culture, zone));
  for (const { at, step } of steps.sort((a, b) => a.at - b.at)) if (at <= now) await step();
}

function stepsOf(recorder: Recorder, culture: DemoCulture, zone: Zone): Done[] {
  const { stay, kind, at, status, grew, decision } = culture;
  const patientId = recorder.patientIds.get(stay);
  if (patientId === undefined) throw new Error(`the demo did not store ${stay}`);
  const by = (when: Instant) => recorder.act(undefined, when);
  let caseId = 0;
  const grown = grew.length > 0 || status === "pending" ? grew : ([["No growth", null]] as const);
  const organisms = grown.map(([name, count]) => ({ name, ...(count === null ? {} : { count }) }));
  const specimen = { patientId, kind, collectedAt: at, method: "culture", status, organisms } as const;
  const signs = signsOf(culture.signs);
  const seen = at + hourMs;
  const reported = status === "pending" ? at + hourMs : at + reportedAfter;
  const steps: Done[] = [
    {
      at: reported,
      step: async () => {
        caseId = (await recordSpecimen(by(reported), specimen)).specimenId;
      },
    },
  ];
  if (signs.length > 0)
    steps.push({
      at: seen,
      step: async () => {
        await recordSigns(by(seen), { patientId, day: zone.dayOf(at), signs });
      },
    });
  if (decision !== null)
    steps.push({
      at: at + decidedAfter,
      step: async () => {
        const reason = decision === "disagreement" ? "The fever came with the pneumonia" : null;
        await decideCase(by(at + decidedAfter), { caseId, kind: decision, reason });
      },
    });
  return steps;
}

/** Signs of a day: a fever or tenderness and nothing else looked for, every sign looked for and absent, or nothing. */
function signsOf(found: SignsFound): GivenSign[] {
  if (found === "unrecorded") return [];
  if (found === "fever") return [{ sign: "temperature", finding: "present", temperature: "38.6 °C" }];
  if (found === "tenderness") return [{ sign: "suprapubic-tenderness", finding: "present" }];
  return signName.options.map((sign) => ({ sign, finding: "absent" }));
}
