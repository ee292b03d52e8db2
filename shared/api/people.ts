import { z } from "zod";
import { endpoint } from "../endpoint.ts";
import { permission } from "../permissions.ts";
import { role } from "../vocabulary.ts";
import { id } from "../wire.ts";

/** The acting person. */
export const readMe = endpoint({
  method: "GET",
  path: "/me",
  summary: "Read who you are here",
  permission: "see-own-account",
  wards: "none",
  reply: "json",
  output: z
    .strictObject({
      personId: id,
      name: z.string(),
      roles: z.array(role),
      wardIds: z.array(id).describe("The wards that the person belongs to"),
      permissions: z.array(permission).describe("What the roles allow, some of it on the person's own wards only"),
    })
    .meta({ id: "Me" }),
  errors: [],
});

/** The people of the facility: pages print who wrote an entry, also when that person has left. */
export const listPeople = endpoint({
  method: "GET",
  path: "/people",
  summary: "List the people of the facility with their roles",
  permission: "see-facility",
  wards: "none",
  reply: "json",
  output: z
    .strictObject({
      people: z
        .array(
          z.strictObject({
            personId: id,
            name: z.string(),
            active: z.boolean().describe("False for who has left: what they wrote keeps their name"),
            roles: z.array(role),
            wardIds: z.array(id),
          }),
        )
        .describe("In the order in which they came"),
    })
    .meta({ id: "People" }),
  errors: [],
});
