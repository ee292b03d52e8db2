import type * as baselines from "../../shared/api/baselines.ts";
import type * as figures from "../../shared/api/month-figures.ts";
import { baselineColumns } from "../../shared/baseline-words.ts";
import { refuse } from "../../shared/problems.ts";
import { textRows } from "../csv/text-rows.ts";
import { listComparisons } from "../usecases/months/list-comparisons.ts";
import { listChangedMonths } from "../usecases/months/month-changes.ts";
import { readMonthFigureSheet, readMonthFigures } from "../usecases/months/read-month-figures.ts";
import {
  listSignedMonths,
  readMonthSignatures,
  readSignedMonth,
  readSignedText,
} from "../usecases/months/read-signatures.ts";
import { setComparison } from "../usecases/months/set-comparison.ts";
import { signMonth } from "../usecases/months/sign-month.ts";
import { addBaseline } from "../usecases/settings/add-baseline.ts";
import { addOwnBaseline } from "../usecases/settings/add-own-baseline.ts";
import { listBaselines } from "../usecases/settings/list-baselines.ts";
import type { Routes } from "./routes.ts";

type Names = keyof typeof baselines | keyof typeof figures;

/** A month's figures, their signatures, and what they are compared with: endpoint to use case. */
export const monthRoutes: Pick<Routes, Names> = {
  readMonthFigures: (act, { month }, reach) => readMonthFigures(act, { month, ...reach }),
  readMonthFigureSheet: (act, { month }, reach) => readMonthFigureSheet(act, { month, ...reach }),
  readMonthSignatures: (act, { month }, reach) => readMonthSignatures(act, { month, ...reach }),
  readSignedMonth: (act, { month, number }, reach) => readSignedMonth(act, { month, number, ...reach }),
  readSignedText: (act, input) => readSignedText(act, input),
  listSignedMonths: (act) => listSignedMonths(act),
  listChangedMonths: (act) => listChangedMonths(act),
  signMonth: (act, input) => signMonth(act, input),
  listBaselines: (act) => listBaselines(act),
  addBaseline: (act, { kind, rows, csv, ...origin }) => {
    if ((rows === undefined) === (csv === undefined))
      refuse("baseline-unusable", "Give either rows or the text of a file.", { pointer: "/rows" });
    const given = rows ?? textRows(csv ?? "", baselineColumns[kind], "baseline-unusable");
    return addBaseline(act, { kind, rows: given, origin });
  },
  addOwnBaseline: (act, input) => addOwnBaseline(act, input),
  listComparisons: (act) => listComparisons(act),
  setComparison: (act, input) => setComparison(act, input),
};
