import { z } from "zod";
import { day } from "../day.ts";
import { endpoint } from "../endpoint.ts";
import { wardSetting } from "../vocabulary.ts";
import { id } from "../wire.ts";

const ward = z
  .strictObject({
    wardId: id,
    code: z.string(),
    name: z.string(),
    type: z.string().nullable(),
    setting: wardSetting.nullable().describe("What the ward is for; null when nobody said"),
    beds: z.int().nullable(),
    openedDay: day.nullable(),
    closedDay: day.nullable(),
    namedOnly: z.boolean().describe("Nobody described the ward: it was named in a file of moves"),
  })
  .meta({ id: "Ward" });

/** The wards that the person may see, as they are today. */
export const listWards = endpoint({
  method: "GET",
  path: "/wards",
  summary: "List the wards",
  permission: "see-wards",
  wards: "facility",
  reply: "json",
  output: z.strictObject({ wards: z.array(ward).describe("By code") }).meta({ id: "Wards" }),
  errors: [],
});
