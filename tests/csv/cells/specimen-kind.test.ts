import { expect, it } from "vitest";
import { defaultSourceSettings } from "../../../shared/source-settings.ts";
import { specimenKindCell } from "../../../src/csv/cells/specimen-kind.ts";
import { zoneNamed } from "../../../src/domain/days/zone.ts";

const context = { zone: zoneNamed("UTC"), settings: defaultSourceSettings, mark: () => {} };

it("reads urine and blood", () => {
  expect(["Urine", "blood"].map((text) => specimenKindCell.read(text, context))).toEqual(["urine", "blood"]);
});

it.each(["catheter tip", "Foley tip", "Tip of catheter", "catheter-tip"])("never takes %j for urine", (text) => {
  expect(() => specimenKindCell.read(text, context)).toThrow("A catheter tip is neither urine nor blood");
});

it("refuses another kind", () => {
  expect(() => specimenKindCell.read("sputum", context)).toThrow("none of: urine, blood");
});
