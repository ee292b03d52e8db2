import { z } from "zod";
import { organismGroup } from "../culture-words.ts";
import { endpoint } from "../endpoint.ts";

/** The list of organisms by which names of laboratories are read. */
export const listOrganisms = endpoint({
  method: "GET",
  path: "/organisms",
  summary: "List the organisms whose names are known, with their groups",
  permission: "see-facility",
  wards: "none",
  reply: "json",
  output: z
    .strictObject({
      organisms: z.array(
        z
          .strictObject({ name: z.string(), group: organismGroup, isCommensal: z.boolean() })
          .meta({ id: "ListedOrganism" }),
      ),
      otherNames: z
        .array(z.string())
        .describe(
          "Abbreviations, older names and names of groups that are read too; lower case, blanks for dots and hyphens",
        ),
    })
    .meta({ id: "Organisms" }),
  errors: [],
});
