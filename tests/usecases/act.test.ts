import { describe, expect, it } from "vitest";
import { type Act, clockToleranceMs, notInFuture, recording } from "../../src/usecases/act.ts";
import { faultsOf } from "../databases/refusal.ts";

describe("a time that is recorded", () => {
  // Five minutes: common practice for clocks of devices.
  it("may run ahead by five minutes and not by a millisecond more", async () => {
    expect(clockToleranceMs).toBe(300_000);
    notInFuture(1000, { seenAt: 301_000 });
    const [fault] = await faultsOf(() => notInFuture(1000, { removedAt: 5, seenAt: 301_001 }));
    expect(fault).toMatchObject({ code: "in-the-future", pointer: "/seenAt" });
  });

  it("may be unknown or not said", () => {
    notInFuture(1000, { seenAt: null, removedAt: undefined });
  });
});

describe("who records", () => {
  it("is the acting person, in their facility, now", () => {
    const actor = { personId: 4, facilityId: 2, roles: [], wardIds: [] };
    expect(recording({ actor, now: 77, store: {} as Act["store"] })).toEqual({ personId: 4, facilityId: 2, now: 77 });
  });
});
