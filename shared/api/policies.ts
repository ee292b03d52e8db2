import { z } from "zod";
import { day } from "../day.ts";
import { endpoint } from "../endpoint.ts";
import { policyBody } from "../policy.ts";
import { policyRules } from "../policy-rules.ts";
import { id, idInPath, instant, reason } from "../wire.ts";

const which = {
  wardId: id.nullable().describe("The ward whose own policy it is; null for the facility's"),
  number: z.int().describe("Counts the versions; 0 is the policy that is built in"),
  fromDay: day.nullable(),
};

/** The policy in force on a ward on a day, with its rules as sentences. */
export const readPolicy = endpoint({
  method: "GET",
  path: "/wards/{wardId}/policy",
  summary: "Read the policy in force on a ward",
  permission: "see-policy",
  wards: "ward",
  reply: "json",
  params: { wardId: idInPath },
  query: { day: day.optional().describe("Today when left out") },
  output: z
    .strictObject({
      ...which,
      body: policyBody,
      sentences: z.array(z.strictObject({ rule: z.string(), sentence: z.string() })).describe("What flags print"),
    })
    .meta({ id: "PolicyInForce" }),
  errors: [],
});

/** All versions: none is ever changed. */
export const listPolicies = endpoint({
  method: "GET",
  path: "/policies",
  summary: "List the versions of the facility's and the wards' policies",
  permission: "see-policy",
  wards: "facility",
  reply: "json",
  output: z
    .strictObject({
      builtIn: z
        .strictObject({ body: policyBody, sources: z.record(z.enum(policyRules), z.string()) })
        .describe("What holds where nobody has set anything, and where each of its rules comes from"),
      policies: z.array(
        z.strictObject({
          ...which,
          policyId: id,
          fromDay: day,
          body: policyBody.nullable().describe("Null: back to the level above"),
          reason: z.string(),
          recordedAt: instant,
          recordedBy: id,
        }),
      ),
    })
    .meta({ id: "Policies" }),
  errors: [],
});

/** A new version, in force from a day on. Versions that hold already stay readable for the days they were in force. */
export const setPolicy = endpoint({
  method: "POST",
  path: "/policies",
  summary: "Set a policy from a day on",
  effect: "creates",
  permission: "set-policy",
  wards: "facility",
  reply: "json",
  body: {
    wardId: id.nullable(),
    fromDay: day.describe("Today or later: what was in force on past days is not changed"),
    body: policyBody.nullable(),
    replaces: z.int().min(0).describe("The latest number of this policy that you saw; 0 when it had none"),
    reason,
  },
  output: z.strictObject({ policyId: id, number: z.int() }).meta({ id: "PolicySet" }),
  errors: ["not-found", "stale-version", "policy-in-the-past", "policy-contradicts"],
});
