import { z } from "zod";
import { endpoint } from "../endpoint.ts";
import { sourceSettings } from "../source-settings.ts";
import { id, idInPath, instant, lineText, reason, version } from "../wire.ts";

const permission = "import-records";
const name = lineText(100).describe("The system that the files come from, such as the admission system");
const changed = z.strictObject({ sourceId: id, version }).meta({ id: "SourceChanged" });

/** The systems that files come from, with how their files are read. */
export const listSources = endpoint({
  method: "GET",
  path: "/import-sources",
  summary: "List the sources of imported files, with how their files are read",
  permission,
  wards: "none",
  reply: "json",
  output: z
    .strictObject({
      sources: z
        .array(
          z.strictObject({
            ...{ sourceId: id, name: z.string(), settings: sourceSettings, version },
            ...{ recordedAt: instant, recordedBy: id },
            aliases: z
              .array(
                z.strictObject({
                  ...{ aliasId: id, wardId: id, version, recordedAt: instant, recordedBy: id },
                  code: z.string().describe("As the files of the source write it"),
                }),
              )
              .describe("What the source calls wards, by code"),
          }),
        )
        .describe("By name"),
    })
    .meta({ id: "ImportSources" }),
  errors: [],
});

/** A further source. */
export const addSource = endpoint({
  method: "POST",
  path: "/import-sources",
  summary: "Add a source of imported files",
  effect: "creates",
  permission,
  wards: "none",
  reply: "json",
  body: { name, settings: sourceSettings },
  output: changed,
  errors: ["source-name-taken"],
});

/** An answer about a code that was wrong, or is no longer wanted. Later imports ask again. */
export const removeAlias = endpoint({
  method: "POST",
  path: "/import-sources/{sourceId}/aliases/{aliasId}/removal",
  summary: "Remove what a source calls a ward; later imports ask again, stored lines stay",
  effect: "updates",
  permission,
  wards: "none",
  reply: "json",
  params: { sourceId: idInPath, aliasId: idInPath },
  body: { reason },
  output: z.strictObject({ aliasId: id, version }).meta({ id: "AliasRemoved" }),
  errors: ["not-found"],
});

/** How the files of a source are read from now on. What was imported stays as it was read. */
export const changeSource = endpoint({
  method: "POST",
  path: "/import-sources/{sourceId}/settings",
  summary: "Change how the files of a source are read; what was imported stays as it was read",
  effect: "updates",
  permission,
  wards: "none",
  reply: "json",
  params: { sourceId: idInPath },
  body: { name, settings: sourceSettings, reason },
  output: changed,
  errors: ["not-found", "source-name-taken"],
});
