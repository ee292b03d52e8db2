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
  errors: ["source-name-taken"],
});
