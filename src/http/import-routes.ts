import { lineOfValues } from "../csv/line-of-values.ts";
import { refuseUnknownFiles } from "../csv/sent-files.ts";
import { zoneNamed } from "../domain/days/zone.ts";
import { decideImport } from "../usecases/imports/decide-import.ts";
import { listImports, readImport } from "../usecases/imports/read-import.ts";
import { readImportLines } from "../usecases/imports/read-import-lines.ts";
import { receiveImport } from "../usecases/imports/receive-import.ts";
import { dropImportLine, repairImportLine } from "../usecases/imports/settle-line.ts";
import { rulesOfImport } from "../usecases/imports/source-of-import.ts";
import { addSource, changeSource, removeAlias } from "../usecases/settings/change-source.ts";
import { listSources } from "../usecases/settings/list-sources.ts";
import { withCells } from "./import-lines.ts";
import type { Routes } from "./routes.ts";

type Name =
  | ("listSources" | "addSource" | "changeSource" | "removeAlias" | "receiveImport" | "listImports" | "readImport")
  | ("readImportLines" | "decideImport" | "repairImportLine" | "dropImportLine");

/** Files, their sources and their lines: endpoint to use case. */
export const importRoutes: Pick<Routes, Name> = {
  listSources: (act) => listSources(act),
  addSource: (act, input) => addSource(act, input),
  changeSource: (act, input) => changeSource(act, input),
  removeAlias: (act, input) => removeAlias(act, input),
  receiveImport: async (act, input) => {
    refuseUnknownFiles(input.files);
    return receiveImport(act, input);
  },
  listImports: (act, input) => listImports(act, input),
  readImport: (act, input) => readImport(act, input),
  readImportLines: async (act, input) => withCells(await readImportLines(act, input)),
  decideImport: (act, input) => decideImport(act, input),
  repairImportLine: async (act, { importId, ...line }) => {
    const { zone, settings } = await act.store.read((read) => rulesOfImport(read, act.actor.facilityId, importId));
    return repairImportLine(act, { importId, item: lineOfValues(line, { zone: zoneNamed(zone), settings }) });
  },
  dropImportLine: (act, input) => dropImportLine(act, input),
};
