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
      permissions: z.array(permission).describe("What the roles allow, some of it on the person's own wards only"),
    })
    .meta({ id: "Me" }),
  errors: [],
});
