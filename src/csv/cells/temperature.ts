import { refuse } from "../../../shared/problems.ts";
import { readTemperature, type Temperature } from "../../domain/criteria/index.ts";
import type { CellReader } from "../column.ts";

/** A temperature as it was measured, `38.4` or `101.1 F`, never converted. Refuses all else (`csv-temperature`). */
export const temperature: CellReader<Temperature> = {
  isIdentifier: false,
  read(text) {
    const read = readTemperature(text);
    return read ?? refuse("csv-temperature", "This is not one temperature with at most two decimals.");
  },
};
