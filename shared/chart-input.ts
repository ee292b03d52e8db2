import { z } from "zod";

/** Null is missing, never zero. */
const figure = z.number().nullable();
const reason = z.string().nullable();

const open = z
  .int()
  .min(1)
  .optional()
  .describe("Cultures behind the point that are not decided, so that it is not final; left out: none");

const head = {
  id: z.string().describe("Unique on its page"),
  title: z.string(),
  sentence: z.string().describe("What the chart shows, and what it does not"),
};

const funnelLine = z.strictObject({
  name: z.string(),
  places: z.array(z.strictObject({ days: z.number(), lower: z.number(), upper: z.number() })),
});

const funnel = z.strictObject({
  ...head,
  unit: z.string(),
  daysUnit: z.string(),
  eventsUnit: z.string(),
  target: z.number(),
  targetName: z.string(),
  inner: funnelLine,
  outer: funnelLine,
  wards: z.array(
    z.strictObject({
      name: z.string(),
      events: figure,
      days: z.number(),
      rate: figure,
      lower: figure.describe("The inner limits at its own days; null without a rate"),
      upper: figure,
      position: z.enum(["inside", "outside-inner", "outside-outer"]),
      reason,
      open,
    }),
  ),
});

const intervals = z.strictObject({
  ...head,
  unit: z.string(),
  decimals: z.int(),
  scale: z.enum(["linear", "log"]),
  reference: z.number(),
  referenceName: z.string(),
  rows: z.array(z.strictObject({ name: z.string(), estimate: figure, lower: figure, upper: figure, reason, open })),
});

const control = z.strictObject({
  ...head,
  unit: z.string(),
  pointsAre: z.string(),
  decimals: z.int(),
  center: z.number(),
  centerName: z.string(),
  median: figure.describe("What runs are judged against; null where it is the center or runs are not judged"),
  points: z.array(
    z.strictObject({
      label: z.string(),
      value: figure,
      lower: figure,
      upper: figure,
      signal: z.enum(["outside", "run"]).nullable(),
      reason,
      open,
    }),
  ),
});

const trend = z.strictObject({
  ...head,
  unit: z.string(),
  decimals: z.int(),
  periods: z.array(z.string()),
  periodsAre: z.string(),
  series: z
    .array(
      z.strictObject({
        name: z.string(),
        values: z.array(figure),
        open: z.array(z.int().min(0)).optional().describe("Cultures behind each value that are not decided"),
      }),
    )
    .max(6),
});

const dwell = z.strictObject({
  ...head,
  series: z
    .array(
      z.strictObject({
        name: z.string(),
        median: figure,
        steps: z.array(
          z.strictObject({
            time: z.number(),
            atRisk: z.int(),
            events: z.int(),
            censored: z.int(),
            survival: z.number(),
          }),
        ),
      }),
    )
    .max(6),
});

const absent = z.strictObject(head).describe("A chart that cannot be drawn: its sentence says why");

/** What a chart is drawn from; server and browser draw the same of it. `notes` are sentences that stand below it. */
export const chartInput = z
  .discriminatedUnion("kind", [
    z.strictObject({ kind: z.literal("funnel"), input: funnel, notes: z.array(z.string()) }),
    z.strictObject({ kind: z.literal("intervals"), input: intervals, notes: z.array(z.string()) }),
    z.strictObject({ kind: z.literal("control"), input: control, notes: z.array(z.string()) }),
    z.strictObject({ kind: z.literal("trend"), input: trend, notes: z.array(z.string()) }),
    z.strictObject({ kind: z.literal("dwell"), input: dwell, notes: z.array(z.string()) }),
    z.strictObject({ kind: z.literal("absent"), input: absent, notes: z.array(z.string()) }),
  ])
  .meta({ id: "ChartInput" });
export type ChartInput = z.infer<typeof chartInput>;
