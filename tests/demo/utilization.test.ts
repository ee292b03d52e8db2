import { describe, expect, it } from "vitest";
import { demoWards } from "../../src/demo/wards.ts";
import { hospitalAt, midnight, noon, zone } from "./drawn.ts";

/** Patient-days and catheter-days of the inpatient wards over the year, counted at each midnight. */
function daysByWard() {
  const { courses } = hospitalAt(noon);
  const wards = new Map<string, { patients: number; catheters: number }>();
  const today = zone.dayOf(noon);
  for (const { legs, catheters } of courses) {
    const end = legs.at(-1)?.to ?? 0;
    for (
      let day = Math.max(today - 364, zone.dayOf(legs[0]?.from ?? 0));
      day <= Math.min(today, zone.dayOf(Math.min(end, noon)));
      day++
    ) {
      const at = midnight(day);
      const leg = legs.find(({ from, to }) => from <= at && at < to);
      if (leg?.ward.setting !== "inpatient") continue;
      const days = wards.get(leg.ward.code) ?? { patients: 0, catheters: 0 };
      wards.set(leg.ward.code, days);
      days.patients += 1;
      const inPlace = catheters.some(
        ({ kind, start, removed }) => kind === "indwelling-urethral" && start <= at && at < (removed ?? end),
      );
      if (inPlace) days.catheters += 1;
    }
  }
  return wards;
}

/** Device utilization of some wards together. */
function ratioOf(
  wards: ReadonlyMap<string, { patients: number; catheters: number }>,
  codes: readonly string[],
): number {
  const days = codes.flatMap((code) => wards.get(code) ?? []);
  return (
    days.reduce((sum, { catheters }) => sum + catheters, 0) / days.reduce((sum, { patients }) => sum + patients, 0)
  );
}

describe("the use of catheters in the demo is near that of real wards", () => {
  const wards = daysByWard();
  const inpatient = demoWards.filter(({ setting }) => setting === "inpatient").map(({ code }) => code);

  // Pooled mean utilization ratios by type of ward: CDC, data summary of the device-associated module for 2013 (Dudeck et
  // al., Am J Infect Control 2015;43:206-221, table 5), from memory, rounded.
  it.each([
    ["3E", 0.15],
    ["3W", 0.21],
    ["4S", 0.07],
    ["ICU", 0.6],
    ["SDU", 0.2],
  ])("on %s: about %d", (code, published) => {
    expect(Math.abs(ratioOf(wards, [code]) - published)).toBeLessThan(0.05);
  });

  // 18.1 % before and 13.8 % after an effort to use fewer, 163 inpatient units of Michigan hospitals without intensive
  // care mostly: Fakih et al., Arch Intern Med 2012;172:255-260, abstract.
  it("on the general wards that do not overuse them", () => {
    const ratio = ratioOf(wards, ["3E", "3W", "4S", "SDU"]);
    expect(ratio).toBeGreaterThan(0.138 - 0.02);
    expect(ratio).toBeLessThan(0.181 + 0.02);
  });

  // Prevalence of urethral catheters 21.2 %, from 13.4 % to 27.3 % by hospital, 28 Dutch hospitals in 2009 and 2010: the
  // abstract of PubMed 22954383.
  it("in the whole hospital", () => {
    const ratio = ratioOf(wards, inpatient);
    expect(ratio).toBeGreaterThan(0.134);
    expect(ratio).toBeLessThan(0.273);
  });

  // Orthopedic wards 0.2: the same table, from memory.
  it("except on 4N, which keeps them far too long", () => {
    expect(ratioOf(wards, ["4N"])).toBeGreaterThan(0.2 + 0.1);
    expect(inpatient.filter((code) => ratioOf(wards, [code]) >= ratioOf(wards, ["4N"])).sort()).toEqual(["4N", "ICU"]);
  });
});
