import { expect, it } from "vitest";
import { columnName } from "../../src/csv/column-name.ts";

it.each([
  ["birth_date", "birth_date"],
  [" Birth Date ", "birth_date"],
  ["IN-PLACE-ON-ARRIVAL", "in_place_on_arrival"],
  ["size\u00a0_fr", "size_fr"],
  ["", ""],
])("spells %j as layouts do", (cell, name) => {
  expect(columnName(cell)).toBe(name);
});
