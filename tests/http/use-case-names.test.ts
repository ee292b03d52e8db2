import { expect, it } from "vitest";
import { routes } from "../../src/http/routes.ts";

/** Several endpoints that are one use case, and the one that hands a record on with what was written down of it. */
const shared: Partial<Record<keyof typeof routes, string>> = {
  confirmCase: "decideCase",
  disagreeWithCase: "decideCase",
  reopenCase: "decideCase",
  endWatch: "changeWatch",
  voidWatch: "changeWatch",
  reviewCatheter: "writeNote",
  confirmCatheter: "writeNote",
  recordCareCheck: "writeNote",
  recordUrineOutput: "writeNote",
  insertCatheter: "recordInsertion",
  removeCatheter: "recordRemoval",
  correctCatheter: "changeCatheter",
};

it("each endpoint calls the use case of its name, or the one that it shares", () => {
  const others = Object.entries(routes).flatMap(([name, run]) => {
    const wanted = shared[name as keyof typeof routes] ?? name;
    return new RegExp(`\\b${wanted}\\)?\\(`).test(run.toString()) ? [] : [name];
  });
  expect(others).toEqual([]);
});
