import { readAgreement } from "./agreements.ts";
import { readFacility } from "./facility.ts";
import { readMonth, readWardMonth } from "./months.ts";
import { readMe } from "./people.ts";
import { readWardDay } from "./ward-days.ts";
import { listWards } from "./wards.ts";

/** Where the API begins. A change that breaks a client gets a new number. */
export const apiBase = "/api/v1";

/** The whole API: every endpoint under the name by which documents and code call it. */
export const endpoints = {
  readMe,
  readFacility,
  listWards,
  readMonth,
  readWardMonth,
  readWardDay,
  readAgreement,
} as const;
