import type { endpoints } from "../../shared/api/index.ts";
import type { Endpoint, InputOf, OutputOf } from "../../shared/endpoint.ts";
import type { Act } from "../usecases/act.ts";
import { listWards } from "../usecases/list-wards.ts";
import type { Reach } from "../usecases/reach.ts";
import { readAgreement } from "../usecases/read-agreement.ts";
import { readFacility } from "../usecases/read-facility.ts";
import { readMe } from "../usecases/read-me.ts";
import { reportMonth } from "../usecases/report-month.ts";
import { reportWardDay } from "../usecases/report-ward-day.ts";
import { reportWardDays } from "../usecases/report-ward-days.ts";

/**
 * What answers an endpoint. The input was read by its contract, the person may do this, and a ward that is named is
 * within their reach; `reach` matters to endpoints of many wards.
 */
export type Route<E extends Endpoint> = (act: Act, input: InputOf<E>, reach: Reach) => Promise<OutputOf<E>>;

/** Endpoint to use case, each on one line. An endpoint without a line here does not compile. */
export const routes: { readonly [Name in keyof typeof endpoints]: Route<(typeof endpoints)[Name]> } = {
  readMe: (act) => readMe(act),
  readFacility: (act) => readFacility(act),
  listWards: (act, _input, reach) => listWards(act, reach),
  readMonth: (act, { month }, reach) => reportMonth(act, { month, ...reach }),
  readWardMonth: (act, input) => reportWardDays(act, input),
  readWardDay: (act, input) => reportWardDay(act, input),
  readAgreement: (act, input) => readAgreement(act, input),
};
