import { describe, expect, it } from "vitest";
import { layouts } from "../../src/csv/layout.ts";

/** The published layout of the files: a column with a question mark may be left out. */
const published = {
  "wards.csv": "ward name? type? setting? beds? opened? closed?",
  "stays.csv": "stay patient birth_date? sex? admitted? discharged? disposition?",
  "moves.csv": "stay patient ward bed? from to? absence?",
  "catheters.csv":
    "stay catheter? kind? inserted? removed? last_seen? in_place_on_arrival? indication? size_fr? balloon_ml?",
  "reviews.csv": "catheter? stay? day outcome indication? note? written?",
  "specimens.csv": "stay specimen? kind collected method? status? organism? group? count?",
  "signs.csv": "stay day time? sign present? value? other_cause? last_day? reviewed?",
  "daily-counts.csv": "ward day patients catheters",
};

describe("layouts", () => {
  it("have the published files and columns, in this order", () => {
    const own = layouts.map(({ name, columns }) => [
      name,
      Object.entries(columns)
        .map(([column, { isRequired }]) => `${column}${isRequired ? "" : "?"}`)
        .join(" "),
    ]);
    expect(own).toEqual(Object.entries(published));
  });

  it("spell names as they are looked up", () => {
    const names = layouts.map(({ name }) => name);
    expect(names).toEqual(names.map((name) => name.toLowerCase()));
    expect(new Set(names).size).toBe(names.length);
    const columns = layouts.flatMap((layout) => Object.keys(layout.columns));
    expect(columns.filter((name) => !/^[a-z]+(_[a-z]+)*$/.test(name))).toEqual([]);
  });
});
