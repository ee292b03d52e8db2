import type { readMonth as endpoint } from "../../../shared/api/months.ts";
import type { Month } from "../../../shared/day.ts";
import type { OutputOf } from "../../../shared/endpoint.ts";
import { monthDays } from "../../domain/days/month.ts";
import { reports } from "../../domain/reports/index.ts";
import { openTogether } from "../../domain/reports/infections.ts";
import { ofOwnWards } from "../../domain/reports/own-wards.ts";
import { withInfections } from "../../domain/reports/with-infections.ts";
import type { Act } from "../act.ts";
import type { Reach } from "../reach.ts";
import { censusTaken } from "./census-taken.ts";
import { loadMonth } from "./load-month.ts";
import { type MonthInfections, readInfections } from "./read-infections.ts";

type Answer = OutputOf<typeof endpoint>;

/** A month of the wards within reach, with the ward of each row and its infections. Refuses `in-the-future`. */
export async function readMonth(act: Act, input: { month: Month } & Reach): Promise<Answer> {
  const { month, wardIds: reached } = input;
  const days = monthDays(month);
  await censusTaken(act, days.first, "/month");
  const facts = await loadMonth(act, { days, ...(reached ? { wardIds: reached } : {}) });
  const wardIds = facts.wards.map((ward) => ward.wardId);
  const infections = await readInfections(act, { month, wardIds });
  const sheet = withInfections(reports.month(facts), infections);
  return { month, wardIds, sheet: reached ? ofOwnWards(sheet) : sheet, infections: infections.map(infectionsTold) };
}

function infectionsTold({ watch, noneFound, ...ward }: MonthInfections): Answer["infections"][0] {
  const { wardId, cautis, waiting, cannotTell, pending, closed, determined, open } = ward;
  const { hinging, fewTemperatures } = ward;
  return {
    ...{ wardId, cautis, waiting, cannotTell, pending, closed, determined, hinging, fewTemperatures },
    ...{ open: openTogether([{ open }]).all, isWatched: watch !== null, edition: watch?.edition ?? null },
    noneFound: noneFound && {
      ...{ noneFoundId: noneFound.id, version: noneFound.version },
      ...{ at: noneFound.recordedAt, by: noneFound.recordedBy },
    },
  };
}
