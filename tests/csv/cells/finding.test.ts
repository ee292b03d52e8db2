import { expect, it } from "vitest";
import { finding } from "../../../src/csv/cells/finding.ts";
import { readCell } from "./read-cell.ts";

it.each([
  ["yes", "present"],
  ["Y", "present"],
  ["present", "present"],
  ["NO", "absent"],
  ["n", "absent"],
  ["Absent", "absent"],
  ["not recorded", "not-recorded"],
  ["Not documented", "not-documented"],
  ["maybe", "csv-word"],
  ["1", "csv-word"],
  ["toString", "csv-word"],
])("%j of a sign is %s", (text, read) => {
  expect(readCell(finding, text).value).toBe(read);
});
