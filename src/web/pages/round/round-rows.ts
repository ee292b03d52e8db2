import type { readRound } from "../../../../shared/api/rounds.ts";
import type { OutputOf } from "../../../../shared/endpoint.ts";

/** A ward's round as the server tells it. */
export type Round = OutputOf<typeof readRound>;

/** One catheter of it. */
export type RoundRow = Round["rows"][number];
