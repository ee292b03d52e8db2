import { expect, it } from "vitest";
import { defaultSourceSettings } from "../../shared/source-settings.ts";
import { itemsFrom } from "../../src/csv/intake-items.ts";
import { readSources } from "../../src/csv/read-sources.ts";
import { zoneNamed } from "../../src/domain/days/zone.ts";

it("lines get their fingerprint, refused ones pass, and notices are told at once by file", async () => {
  const text = "ward,beds\n3E,28\n3W,many\n";
  const sources = ["wards.csv", "notes.txt"].map((name) => ({
    name,
    open: async function* () {
      yield new TextEncoder().encode(text);
    },
  }));
  const notices: string[] = [];
  const items: unknown[] = [];
  for await (const item of itemsFrom(
    readSources(sources, { zone: zoneNamed("UTC"), settings: defaultSourceSettings }),
    (notice) => notices.push(notice),
  ))
    items.push(item);
  expect(items).toMatchObject([
    { type: "line", file: "wards.csv", line: 2, fingerprint: expect.stringMatching(/^[\w-]{22}$/) },
    { type: "refused", file: "wards.csv", line: 3, faults: [{ code: "csv-number", column: "beds" }] },
  ]);
  expect(notices).toEqual([expect.stringMatching(/^notes\.txt: This file is not read: .+\n$/)]);
});

it("a notice about no file stands alone", async () => {
  const sources = async function* () {
    yield { type: "notice", code: "file-unknown", file: null, detail: "3 more files are not known." } as const;
  };
  const notices: string[] = [];
  for await (const _ of itemsFrom(sources(), (notice) => notices.push(notice))) throw new Error("no line");
  expect(notices).toEqual(["3 more files are not known.\n"]);
});
