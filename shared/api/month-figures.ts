import { z } from "zod";
import { auditAction } from "../audit-words.ts";
import { month } from "../day.ts";
import { endpoint } from "../endpoint.ts";
import { figureKeys } from "../figure-words.ts";
import { monthReport } from "../month-report.ts";
import { sheet } from "../sheet.ts";
import { changedEntry, figureChange } from "../signed-changes.ts";
import { role } from "../vocabulary.ts";
import { id, idInPath, instant, reason } from "../wire.ts";

const digest = z.string().describe("SHA-256 of the canonical text (RFC 8785), in hexadecimal digits");

/** A month with every figure and its limits, of the wards that the person may see. */
export const readMonthFigures = endpoint({
  method: "GET",
  path: "/months/{month}/figures",
  summary: "Read a month's figures with limits, methods and reasons, of each ward and of all",
  permission: "see-counts",
  wards: "facility",
  reply: "json",
  heavy: true,
  params: { month },
  output: z
    .strictObject({
      month,
      report: monthReport,
      seen: digest.describe("Stands for these figures: send it when you sign them"),
    })
    .meta({ id: "MonthFigures" }),
  errors: ["in-the-future"],
});

/** The same as rows, one a ward and figure. */
export const readMonthFigureSheet = endpoint({
  method: "GET",
  path: "/months/{month}/figures/sheet",
  summary: "Read a month's figures as rows, one for each ward and figure",
  permission: "see-counts",
  wards: "facility",
  reply: "sheet",
  heavy: true,
  params: { month },
  output: z.strictObject({ month, sheet }).meta({ id: "MonthFigureSheet" }),
  errors: ["in-the-future"],
});

const signature = z
  .strictObject({
    number: z.int().min(1).describe("1 is the signing, each higher number an amendment"),
    signedAt: instant,
    signedBy: id,
    role,
    reason: z.string().nullable().describe("Why it was signed anew; the first signature needs none"),
    digest,
  })
  .meta({ id: "Signature" });

/** One thing that is no longer as it was signed. */
const monthDifference = z
  .strictObject({
    wardId: id.nullable().describe("Null: all wards together, or the report as a whole"),
    ward: z.string().nullable(),
    figure: z.enum(figureKeys).nullable().describe("Null: something else than a figure"),
    what: z.string(),
    signed: z.union([z.string(), z.number()]).nullable(),
    now: z.union([z.string(), z.number()]).nullable(),
  })
  .meta({ id: "MonthDifference" });

/** An act that changed figures of a month after it was signed. */
const monthChange = z
  .strictObject({
    changeId: id,
    number: z.int().min(1).describe("The latest signature at that time"),
    at: instant,
    by: id,
    action: auditAction,
    entry: changedEntry.nullable().describe("Null: several things, or records of patients that the person may not see"),
    figures: z.array(figureChange).describe("Of the wards that the person may see; none when they were not compared"),
    isOpen: z.boolean().describe("The month was not signed again since and does not say again what was signed"),
  })
  .meta({ id: "MonthChange" });

/** Who signed a month, and what has changed since. */
export const readMonthSignatures = endpoint({
  method: "GET",
  path: "/months/{month}/signatures",
  summary: "Read who signed a month, when, and what has changed in the record since",
  permission: "see-counts",
  wards: "facility",
  reply: "json",
  heavy: true,
  params: { month },
  output: z
    .strictObject({
      month,
      signatures: z.array(signature),
      differences: z.array(monthDifference),
      changes: z.array(monthChange).describe("What changed it after a signature, the latest 200, the latest first"),
    })
    .meta({ id: "MonthSignatures" }),
  errors: ["in-the-future"],
});

/** What was signed, as it was signed. */
export const readSignedMonth = endpoint({
  method: "GET",
  path: "/months/{month}/signatures/{number}",
  summary: "Read a month as it was signed, of the wards that the person may see",
  permission: "see-counts",
  wards: "facility",
  reply: "json",
  heavy: true,
  params: { month, number: idInPath },
  output: z.strictObject({ month, signature, report: monthReport }).meta({ id: "SignedMonth" }),
  errors: ["not-found"],
});

/** The very text over which the digest was made. */
export const readSignedText = endpoint({
  method: "GET",
  path: "/months/{month}/signatures/{number}/text",
  summary: "Read the canonical text that was signed, byte for byte",
  permission: "sign-month",
  wards: "facility",
  reply: "json",
  params: { month, number: idInPath },
  output: z.strictObject({ month, number: z.int(), text: z.string(), digest }).meta({ id: "SignedText" }),
  errors: ["not-found"],
});

/** Every signature of the facility. */
export const listSignedMonths = endpoint({
  method: "GET",
  path: "/signed-months",
  summary: "List the months that were signed, with their latest signature",
  permission: "see-counts",
  wards: "facility",
  reply: "json",
  heavy: true,
  output: z
    .strictObject({ months: z.array(z.strictObject({ month, signature, signatures: z.int().min(1) })) })
    .meta({ id: "SignedMonths" }),
  errors: [],
});

/** The months of which something is no longer as it was signed. */
export const listChangedMonths = endpoint({
  method: "GET",
  path: "/changed-months",
  summary: "List the signed months whose figures have changed since, with what was changed last",
  permission: "sign-month",
  wards: "facility",
  reply: "json",
  heavy: true,
  output: z
    .strictObject({
      months: z.array(
        z.strictObject({
          month,
          changes: z.int().min(1).describe("How many acts changed it"),
          wards: z.array(z.string()).describe("Codes of the wards whose figures they changed"),
          latest: z.strictObject({ at: instant, by: id, action: auditAction }),
        }),
      ),
    })
    .meta({ id: "ChangedMonths" }),
  errors: [],
});

/** Signs what the person saw: refused when the figures are others by now, or something is missing that blocks. */
export const signMonth = endpoint({
  method: "POST",
  path: "/months/{month}/signatures",
  summary: "Sign a month, or sign it anew with a reason",
  effect: "creates",
  permission: "sign-month",
  wards: "facility",
  reply: "json",
  params: { month },
  body: {
    seen: z.string().regex(/^[0-9a-f]{64}$/, "send the 64 digits that stand for the figures that you saw"),
    replaces: z.int().min(0).describe("The latest signature that you saw; 0 when the month had none"),
    reason: reason.nullable().describe("Why it is signed anew; the first signature needs none"),
  },
  output: z.strictObject({ month, signature }).meta({ id: "MonthSigned" }),
  errors: [
    "in-the-future",
    "stale-version",
    "month-changed",
    "month-not-ready",
    "amendment-reason-missing",
    "nothing-to-amend",
  ],
});
