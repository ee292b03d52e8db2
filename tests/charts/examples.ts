import { controlChart } from "../../src/charts/control-chart.ts";
import { dayPicture } from "../../src/charts/day-picture.ts";
import { dwellChart } from "../../src/charts/dwell-chart.ts";
import { intervalList } from "../../src/charts/interval-list.ts";
import { trendChart } from "../../src/charts/trend-chart.ts";
import { type Dwell, dwellCurve } from "../../src/domain/statistics/dwell-curve.ts";
import { gChart } from "../../src/domain/statistics/g-chart.ts";
import { quantileOfList } from "../../src/domain/statistics/quantile-of-list.ts";
import { rateWithLimits } from "../../src/domain/statistics/rate-with-limits.ts";
import { uChart } from "../../src/domain/statistics/u-chart.ts";
import { notFinal, per, target, wards } from "./funnel-example.ts";

const months = [..."123456789"].map((n) => `2025-0${n}`).concat("2025-10", "2025-11", "2025-12");
const periods = [2, 0, 1, 3, 1, 2, 0, 9, 1, 0, 1, 2].map((events, at) => ({
  events,
  days: at === 6 ? 0 : 360 + 25 * (at % 5),
}));
const medianRate = quantileOfList(
  periods.flatMap(({ events, days }) => (days === 0 ? [] : [events / days])),
  0.5,
);
const chart = uChart({ periods, sigmas: 3 });
export const uControl = controlChart({
  ...{ id: "u", title: "CAUTI rate of the ICU by month, 2025", unit: "CAUTIs per 1,000 catheter-days" },
  sentence: "Shows months that chance alone would rarely give; it does not say why.",
  ...{
    pointsAre: "Month",
    decimals: 2,
    center: (chart.center.value ?? 0) * per,
    centerName: "pooled rate",
    median: medianRate * per,
  },
  points: chart.points.map(({ rate, exactLower, exactUpper }, at) => ({
    ...{ label: months[at] ?? "", value: rate.value === null ? null : rate.value * per },
    ...{ lower: exactLower === null ? null : exactLower * per, upper: exactUpper === null ? null : exactUpper * per },
    signal: rate.value !== null && exactUpper !== null && rate.value > exactUpper ? "outside" : null,
    ...(at === 11 ? { open: 2 } : {}),
    reason: rate.value === null ? rate.reason : null,
  })),
});

const gaps = [212, 45, 310, 18, 96, 150, 2_402, 77, 33, 260, 129, 88];
const found = gChart(gaps);
if ("value" in found) throw new Error(found.reason);
export const gControl = controlChart({
  ...{ id: "g", title: "Catheter-days between CAUTIs of ward 4E", unit: "catheter-days between CAUTIs" },
  sentence: "Shows gaps that are longer than chance allows, which is good news; short gaps alone say little.",
  ...{ pointsAre: "CAUTI", decimals: 0, center: found.median, centerName: "median", median: null },
  points: gaps.map((gap, at) => ({
    ...{ label: `${at + 1}`, value: gap, lower: found.lower, upper: found.upper, reason: null },
    signal: gap > found.upper ? "outside" : at > 7 ? "run" : null,
  })),
});

const newWard = [0.29, 0.31, 0.3, 0.28, 0.27, 0.28, 0.26, 0.25, 0.26, 0.26, 0.24, 0.25];
export const trend = trendChart({
  ...{ id: "trend", title: "Utilization of three wards by month, 2025", unit: "catheter-days per patient-day" },
  sentence: "Shows how utilization went on one scale; it does not say whether catheters were needed.",
  ...{ decimals: 2, periods: months, periodsAre: "Month" },
  series: [
    { name: "ICU", values: [0.71, 0.7, 0.72, 0.69, 0.66, 0.67, 0.65, 0.62, 0.63, 0.61, 0.6, 0.58] },
    { name: "4E", values: [0.31, 0.3, 0.29, 0.33, null, null, 0.28, 0.27, 0.26, 0.27, 0.25, 0.24] },
    { name: "3W <new>", open: months.map((_, at) => Math.max(0, at - 9)), values: newWard },
  ],
});

const dwells = (days: number[], ends: string): Dwell[] =>
  days.map((one, at) => ({
    days: one,
    end: ({ r: "removed", i: "in-place", d: "died", h: "discharged" } as const)[ends[at] as "r" | "i" | "d" | "h"],
  }));
export const dwell = dwellChart({
  ...{ id: "dwell", title: "Days in place of catheters, 2025" },
  sentence: "Shows how long catheters stay, those still in place included; it does not show which of them were needed.",
  series: [
    { name: "ICU", of: dwellCurve(dwells([2, 3, 3, 5, 6, 8, 9, 12, 14, 20], "rrrdrrrirh")) },
    { name: "4E", of: dwellCurve(dwells([1, 1, 2, 2, 2, 3, 4, 6, 7, 11], "rrrrhrrrri")) },
  ].map(({ name, of }) => ({ name, steps: of.steps, median: of.median.time.value })),
});

export const intervals = intervalList({
  ...{ id: "rates", title: "CAUTI rates of wards with their limits, 2025", unit: "CAUTIs per 1,000 catheter-days" },
  sentence: "Shows how wide the limits of small wards are; wards whose limits overlap are not told apart.",
  ...{ decimals: 2, scale: "linear" as const, reference: target * per, referenceName: "pooled rate" },
  rows: wards.map(({ name, events, days }) => {
    const { rate, lower, upper } = rateWithLimits({ events, days, per, level: 0.95, by: "mid-p" });
    const reason = rate.value === null ? rate.reason : null;
    return { name, estimate: rate.value, lower: lower.value, upper: upper.value, reason, ...notFinal(name) };
  }),
});

export const ratios = intervalList({
  ...{ id: "ratios", title: "SIRs of units, 2025", unit: "SIR" },
  sentence: "Shows which SIRs differ from 1 by more than chance; it does not compare units with each other.",
  ...{ decimals: 2, scale: "log" as const, reference: 1, referenceName: "as predicted" },
  rows: [
    { name: "ICU", estimate: 1.951, lower: 0.991, upper: 3.477, reason: null },
    { name: "4E", estimate: 2, lower: 1.256, upper: 3.034, reason: null },
    {
      name: "CCU",
      estimate: 0,
      lower: null,
      upper: 1.198,
      reason: "no lower limit, because no infections are observed",
    },
    { name: "REHAB", estimate: null, lower: null, upper: null, reason: "withheld: fewer than 1.0 are predicted" },
  ],
});

const monthOf = (at: number) => (at < 3 ? "Feb" : "Mar");
/** Made up: a culture of 6 March, fever two days before, a catheter since 28 February, a move on 4 March. */
export const picture = dayPicture({
  ...{ id: "picture", title: "Days around the culture of 6 March" },
  sentence: "Wards, catheter, signs and cultures of each day, with the periods that the definitions lay around them.",
  dayLabel: "Day",
  days: Array.from({ length: 16 }, (_, at) => {
    const number = String(at < 3 ? 27 + at : at - 2);
    return { number, month: monthOf(at), words: `${number} ${monthOf(at)}` };
  }),
  marked: { day: 6, word: "Date of event", text: "Date of event: 4 Mar" },
  lanes: [
    {
      label: "Ward",
      spans: [
        { from: 0, to: 6, look: "place", word: "ICU", text: "ICU until 4 Mar", opensBefore: true },
        { from: 6, to: 15, look: "place", word: "3E", text: "3E from 4 Mar, still there", opensAfter: true },
      ],
      marks: [],
    },
    {
      label: "Catheter",
      spans: [
        { from: 1, to: 7, look: "bar", word: "in place", text: "Catheter from 28 Feb to 5 Mar" },
        { from: 8, to: 9, look: "maybe", word: "perhaps", text: "It may have been in place until 7 Mar" },
      ],
      marks: [],
    },
    {
      label: "Signs",
      spans: [],
      marks: [
        { day: 6, shape: "triangle", word: "38.4", text: "Temperature 38.4 °C on 4 Mar" },
        { day: 6, shape: "square", word: "SPT", text: "Suprapubic tenderness on 4 Mar" },
        { day: 7, shape: "ring", word: "SPT", text: "Suprapubic tenderness absent on 5 Mar" },
      ],
    },
    { label: "Cultures", spans: [], marks: [{ day: 8, shape: "diamond", word: "urine", text: "Urine of 6 Mar" }] },
    {
      label: "Periods",
      spans: [
        { from: 5, to: 11, look: "hatched", word: "window", text: "Infection window from 3 to 9 Mar" },
        { from: 6, to: 15, look: "dotted", word: "timeframe", text: "Timeframe from 4 Mar on", opensAfter: true },
        { from: 5, to: 15, look: "barred", word: "bloodstream", text: "Bloodstream period from 3 Mar on" },
      ],
      marks: [],
    },
  ],
});
