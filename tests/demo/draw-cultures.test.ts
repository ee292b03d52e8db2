import { expect, it } from "vitest";
import { legAt } from "../../src/demo/course.ts";
import { drawFrom } from "../../src/demo/draw.ts";
import { drawCultures } from "../../src/demo/draw-cultures.ts";
import { hospitalAt, noon, zone } from "./drawn.ts";

const dayMs = 86_400_000;

// Pooled mean rates by type of ward lie between 0.2 and 5 events in 1000 catheter-days: CDC, data summary of the
// device-associated module for 2013 (Dudeck et al., Am J Infect Control 2015;43:206-221), from memory, rounded.
it("the demo has cultures of patients with a catheter, and events about as often as real hospitals", () => {
  const hospital = hospitalAt(noon);
  const cultures = drawCultures(drawFrom(3), hospital, zone);
  expect(drawCultures(drawFrom(3), hospital, zone)).toEqual(cultures);
  const courses = new Map(hospital.courses.map((course) => [course.stay, course]));
  for (const { stay, at } of cultures) {
    expect(at).toBeLessThanOrEqual(noon);
    expect(legAt(courses.get(stay)?.legs ?? [], at)?.ward.setting).toBe("inpatient");
  }
  const catheterDays = hospital.courses
    .flatMap(({ catheters }) => catheters.filter(({ kind }) => kind === "indwelling-urethral"))
    .reduce((sum, { start, gone, removed }) => sum + (Math.min(noon, gone, removed ?? noon) - start) / dayMs, 0);
  const events = cultures.filter(({ grew, signs }) => grew[0]?.[0] !== "Candida albicans" && signs === "fever").length;
  const rate = (1000 * events) / catheterDays;
  expect(rate).toBeGreaterThan(0.2);
  expect(rate).toBeLessThan(5);
  expect(cultures.length).toBeLessThan(200);
  expect(cultures.some(({ decision }) => decision === "disagreement")).toBe(true);
});
