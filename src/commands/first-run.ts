import type { CensusTime } from "../../shared/day.ts";
import { loadAlderBay } from "../demo/load-alder-bay.ts";
import { zoneNamed } from "../domain/days/zone.ts";
import type { Store } from "../usecases/act.ts";
import { firstActor, firstActorOrSetUp, refuseDemo } from "../usecases/settings/find-facility.ts";
import { setUpFacility } from "../usecases/settings/set-up-facility.ts";
import type { CommandContext } from "./command.ts";
import { setUpText } from "./set-up-text.ts";
import { showProgress } from "./show-progress.ts";

const demo = { name: "Alder Bay Hospital", zone: "America/New_York", seed: 1, days: 365 } as const;

/**
 * What the first start does: an empty record of the facility in the settings, or the demo. Does nothing when there is
 * a facility already. A demo that was broken off while it was loaded stays as far as it came.
 */
export async function loadDemoOrSetUp(store: Store, context: CommandContext, empty: boolean): Promise<void> {
  const now = context.clock();
  if (await firstActor(store)) {
    if (empty) await refuseDemo(store);
    return;
  }
  if (empty) {
    context.err(`${setUpText(context.config)}\n`);
    await firstActorOrSetUp({ store, now }, context.config.facility);
    return;
  }
  context.err(`Loading the demo: ${demo.name}. The hospital and its people are fictional.\n`);
  const actor = await setUpFacility(
    { store, now },
    {
      name: demo.name,
      zone: demo.zone,
      censusTime: "00:00" as CensusTime,
      demo: true,
      person: { name: "Robin Vale", roles: ["prevention", "administrator"] },
    },
  );
  const { seed, days, zone } = demo;
  await loadAlderBay({ store, actor, now }, { seed, days, zone: zoneNamed(zone) }, showProgress(context));
}
