import { describe, expect, it } from "vitest";
import { day as dayText, month } from "../../../shared/day.ts";
import { dayNumber } from "../../../src/domain/days/day-number.ts";
import {
  type CaseOfMonth,
  infectionGaps,
  openTogether,
  unwatchedSentences,
  wardInfections,
} from "../../../src/domain/reports/infections.ts";

const march = month.parse("2024-03");
/** So many days into March 2024. */
const at = (day: number) => dayNumber(dayText.parse("2024-02-29")) + day;
const ward = { wardId: 1, watch: { edition: "us-2024", isHeld: true }, isNoneFound: false };
const event = (said: Partial<CaseOfMonth> = {}): CaseOfMonth => ({
  ...{ caseId: 1, wardId: 1, placeId: 2, eventDay: at(10), day: at(11), isCauti: true },
  ...{ outcome: "event", state: "confirmed", mayCount: null, hasHinge: false, hasFewTemperatures: false },
  ...said,
});
const counted = (...cases: CaseOfMonth[]) => wardInfections(cases, ward, march);
const noEvent = { wardId: null, placeId: 1, eventDay: null, isCauti: false };

describe("the infections of a ward and month", () => {
  it("are confirmed events by location of attribution and date of event, a disagreement or not", () => {
    expect(counted(event(), event({ state: "disagreed" }))).toMatchObject({ cautis: 2, waiting: 0 });
    expect(counted(event({ wardId: 2, placeId: 1 }))).toMatchObject({ cautis: 0, waiting: 0 });
    // Collected after the month, on a day of event in it, and the other way round.
    expect(counted(event({ eventDay: at(31), day: at(33) })).cautis).toBe(1);
    expect(counted(event({ eventDay: at(0), day: at(2) })).cautis).toBe(0);
    expect(counted(event({ isCauti: false })).cautis).toBe(0);
  });

  it("have beside them what waits, what cannot be told and what the laboratory has not reported", () => {
    const cannotTell = { ...noEvent, outcome: "cannot-tell" };
    const found = counted(
      event({ state: "waiting" }),
      event({ ...noEvent, outcome: "not-met", state: "changed" }),
      event({ ...cannotTell, state: "waiting" }),
      event({ ...cannotTell, state: "confirmed" }),
      event({ ...noEvent, outcome: "pending", state: "pending", day: at(34) }),
      event({ ...noEvent, outcome: "pending", state: "pending", day: at(35) }),
    );
    expect(found).toMatchObject({ cautis: 0, waiting: 2, cannotTell: 2, cannotTellOpen: 1, pending: 1 });
    expect(infectionGaps([found], true).map(({ kind, count }) => `${kind} ${count}`)).toEqual([
      "cultures-waiting 2",
      "cannot-be-determined 1",
      "cultures-pending 1",
    ]);
  });

  it("count what closed automatically and what hinges on an open reading, of all that were determined", () => {
    const found = counted(
      event({ hasHinge: true }),
      event({ ...noEvent, outcome: "negative", state: "closed" }),
      event({ ...noEvent, outcome: "not-usable", state: "closed", day: 131 }),
      event({ ...noEvent, outcome: "not-met", state: "waiting", hasHinge: true, hasFewTemperatures: true }),
    );
    expect(found).toMatchObject({ closed: 1, determined: 3, hinging: 2, fewTemperatures: 1 });
  });

  it("leave out what was entered in error, but for a decision about it that has to be seen again", () => {
    const gone = { ...noEvent, outcome: "gone" };
    const found = counted(
      event(),
      event({ ...gone, state: "closed" }),
      event({ ...gone, caseId: 2, state: "changed" }),
    );
    expect(found).toMatchObject({ closed: 0, determined: 1, waiting: 1 });
  });

  it("need somebody who says that none were found, once the month of a watched ward is over", () => {
    const kinds = (isOver: boolean, said: object = {}) =>
      infectionGaps([{ ...counted(), ...said }], isOver).map(({ kind }) => kind);
    expect(kinds(true)).toEqual(["none-found-missing"]);
    expect(kinds(false)).toEqual([]);
    expect(kinds(true, { isNoneFound: true })).toEqual([]);
    expect(kinds(true, { watch: null })).toEqual([]);
    expect(kinds(true, { cautis: 1 })).toEqual([]);
    const unheld = { edition: "our-own", isHeld: false };
    expect(kinds(true, { watch: unheld, isNoneFound: true })).toEqual(["edition-unknown"]);
  });

  it("have none beside them that is out of scope, whatever it was determined to be", () => {
    const out = { state: "out-of-scope", mayCount: [] };
    const found = counted(
      event(out),
      event({ ...noEvent, ...out, outcome: "cannot-tell" }),
      event({ ...noEvent, ...out, outcome: "pending" }),
    );
    expect(found).toMatchObject({ cautis: 0, waiting: 0, cannotTell: 0, pending: 0, open: [] });
    expect(infectionGaps([found], false)).toEqual([]);
  });

  it("have beside them what another unit collected and could count here, in the month in which it could", () => {
    const february = month.parse("2024-02");
    // Collected on ward 2 on March 2; by the rule of transfers an event could belong to ward 1 in either month.
    const here = [february, march].map((one) => ({ wardId: 1, month: one }));
    const open = { ...noEvent, placeId: 2, day: at(2), state: "waiting", mayCount: here };
    const cannotTell = event({ ...open, outcome: "cannot-tell" });
    const notMet = event({ ...open, outcome: "not-met" });
    expect(counted(cannotTell)).toMatchObject({ cannotTell: 1, open: [{ caseId: 1, as: "cannot-tell" }] });
    expect(wardInfections([cannotTell], ward, february).cannotTell).toBe(1);
    // What is determined and not confirmed is beside one count alone.
    expect([counted(notMet).waiting, wardInfections([notMet], ward, february).waiting]).toEqual([1, 0]);
    expect(wardInfections([notMet], { ...ward, wardId: 2 }, march).waiting).toBe(0);
  });

  it("are one culture together that could count on two wards", () => {
    const both = event({
      ...{ ...noEvent, outcome: "cannot-tell", state: "waiting" },
      mayCount: [1, 2].map((wardId) => ({ wardId, month: march })),
    });
    const wards = [1, 2].map((wardId) => wardInfections([both], { ...ward, wardId }, march));
    expect(wards.map(({ cannotTell }) => cannotTell)).toEqual([1, 1]);
    expect(openTogether(wards)).toEqual({ "cannot-tell": 1, waiting: 0, pending: 0, all: 1 });
  });

  it("that no month counts are named with their ward", () => {
    expect(
      unwatchedSentences([
        { code: "4S", count: 1 },
        { code: "5E", count: 0 },
      ]),
    ).toEqual(["Confirmed CAUTIs not counted: 1 on 4S, not under surveillance."]);
    expect(unwatchedSentences([])).toEqual([]);
  });
});
