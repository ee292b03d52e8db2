import { describe, expect, it } from "vitest";
import { type CountedCase, infectionGaps, wardInfections } from "../../../src/domain/reports/infections.ts";

const days = { first: 100, last: 130 };
const ward = { wardId: 1, watch: { edition: "us-2024", isHeld: true }, isNoneFound: false };
const event = (said: Partial<CountedCase> = {}): CountedCase => ({
  ...{ wardId: 1, placeId: 2, eventDay: 110, day: 111, isCauti: true, outcome: "event", state: "confirmed" },
  hasHinge: false,
  ...said,
});
const counted = (...cases: CountedCase[]) => wardInfections(cases, ward, days);
const noEvent = { wardId: null, placeId: 1, eventDay: null, isCauti: false };

describe("the infections of a ward and month", () => {
  it("are confirmed events by location of attribution and date of event, a disagreement or not", () => {
    expect(counted(event(), event({ state: "disagreed" }))).toMatchObject({ cautis: 2, waiting: 0 });
    expect(counted(event({ wardId: 2, placeId: 1 }))).toMatchObject({ cautis: 0, waiting: 0 });
    // Collected after the month, on a day of event in it, and the other way round.
    expect(counted(event({ eventDay: 130, day: 132 })).cautis).toBe(1);
    expect(counted(event({ eventDay: 99, day: 101 })).cautis).toBe(0);
    expect(counted(event({ isCauti: false })).cautis).toBe(0);
  });

  it("have beside them what waits, what cannot be told and what the laboratory has not reported", () => {
    const cannotTell = { ...noEvent, outcome: "cannot-tell" };
    const found = counted(
      event({ state: "waiting" }),
      event({ ...noEvent, outcome: "not-met", state: "changed" }),
      event({ ...cannotTell, state: "waiting" }),
      event({ ...cannotTell, state: "confirmed" }),
      event({ ...noEvent, outcome: "pending", state: "pending", day: 133 }),
      event({ ...noEvent, outcome: "pending", state: "pending", day: 134 }),
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
      event({ ...noEvent, outcome: "not-met", state: "waiting", hasHinge: true }),
    );
    expect(found).toMatchObject({ closed: 1, determined: 3, hinging: 2 });
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
});
