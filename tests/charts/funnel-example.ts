import { funnelChart } from "../../src/charts/funnel-chart.ts";
import { exactFunnelLimit } from "../../src/domain/statistics/funnel-limits.ts";

// Made-up wards of the fictional Alder Bay Hospital: infections and catheter-days of a year.
export const wards = [
  ...[
    { name: "3E", events: 3, days: 1_210 },
    { name: "3W", events: 0, days: 640 },
    { name: "4E", events: 15, days: 1_985 },
    { name: "4W", events: 4, days: 1_502 },
    { name: "ICU", events: 19, days: 2_410 },
  ],
  ...[
    { name: "CCU", events: 0, days: 2_210 },
    { name: "5E", events: 2, days: 905 },
    { name: "REHAB", events: 1, days: 150 },
    { name: "6W", events: 0, days: 0 },
  ],
];
export const per = 1_000;
export const target =
  wards.reduce((sum, { events }) => sum + events, 0) / wards.reduce((sum, { days }) => sum + days, 0);
/** The wards of which cultures are open. */
export const notFinal = (name: string) => (name === "3W" ? { open: 2 } : name === "ICU" ? { open: 1 } : {});
const noDays = "There are no days, so there is no rate.";

const limitsAt = (days: number, low: number) => {
  const at = (probability: number) => exactFunnelLimit({ target, denominator: days, probability }).interpolated * per;
  return { days, lower: at(low), upper: at(1 - low) };
};
/** From the fewest days of a ward, 150, to 1.1 times the most, 2,651. */
const line = (low: number) => Array.from({ length: 42 }, (_, at) => limitsAt(150 + at * 61, low));

function positionOf({ events, days }: (typeof wards)[0]) {
  if (days === 0) return "inside";
  const rate = (events / days) * per;
  const outside = (low: number) => rate < limitsAt(days, low).lower || rate > limitsAt(days, low).upper;
  return outside(0.001) ? "outside-outer" : outside(0.025) ? "outside-inner" : "inside";
}

function limitsOf(days: number) {
  const { lower, upper } = limitsAt(days, 0.025);
  return { lower, upper };
}

export const funnel = funnelChart({
  ...{ id: "funnel", title: "CAUTI rates of units of like type, 2025" },
  sentence: "Shows which units are outside the limits of chance around the pooled rate. It does not rank the others.",
  ...{
    unit: "CAUTIs per 1,000 catheter-days",
    daysUnit: "catheter-days",
    eventsUnit: "CAUTIs",
    target: target * per,
    targetName: "pooled rate",
  },
  ...{ inner: { name: "95%", places: line(0.025) }, outer: { name: "99.8%", places: line(0.001) } },
  wards: wards.map((ward) => ({
    ...{ name: ward.name, events: ward.events, days: ward.days, position: positionOf(ward) },
    ...(ward.days === 0 ? { lower: null, upper: null } : limitsOf(ward.days)),
    ...{ rate: ward.days === 0 ? null : (ward.events / ward.days) * per, reason: ward.days === 0 ? noDays : null },
    ...notFinal(ward.name),
  })),
});
