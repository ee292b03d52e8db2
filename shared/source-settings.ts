import { z } from "zod";

/** How the files of a source are read where files of different systems mean different things by the same text. */
export const sourceSettings = z
  .strictObject({
    emptyOrganism: z
      .enum(["reject", "no-growth"])
      .describe("A line of specimens.csv without an organism: rejected, or it says that nothing grew"),
    midnight: z
      .enum(["time", "no-hour"])
      .describe("00:00 in a time: the instant of midnight, or a day without a known hour"),
  })
  .meta({ id: "SourceSettings" });
export type SourceSettings = z.infer<typeof sourceSettings>;

/** What is taken where the facility has not said otherwise: nothing is assumed. */
export const defaultSourceSettings: SourceSettings = { emptyOrganism: "reject", midnight: "time" };

/** The name of a facility's own source, for imports that name none. */
export const ownSourceName = "Files";
