import { expect, it } from "vitest";
import { showProgress } from "../../src/commands/show-progress.ts";
import type { ImportProgress } from "../../src/usecases/imports/intake-item.ts";

const progress: ImportProgress[] = [
  { phase: "reading", done: 2000, total: null },
  { phase: "reading", done: 2500, total: null },
  { phase: "checking", done: 1200, total: 2500 },
  { phase: "checking", done: 2500, total: 2500 },
  { phase: "applying", done: 2500, total: 2500 },
];

function said(interactive: boolean): string {
  let text = "";
  const show = showProgress({
    err: (more) => {
      text += more;
    },
    interactive,
  });
  for (const step of progress) show(step);
  return text;
}

it("progress in a file is one line for each phase", () => {
  expect(said(false)).toBe("Reading lines\nChecking lines\nStoring lines\n");
});

it("progress on a terminal is written over itself, and a phase that is done stays", () => {
  // Carriage return and "erase to the end of the line": ECMA-48, EL.
  const screen = said(true)
    .split("\n")
    .map((line) => line.split("\r\u001b[K").at(-1));
  expect(screen).toEqual(["Checking: 2500 of 2500 lines", "Storing: 2500 of 2500 lines", ""]);
});
