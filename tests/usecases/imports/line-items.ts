import { month as monthText } from "../../../shared/day.ts";
import type { Act } from "../../../src/usecases/act.ts";
import { readMonthGaps } from "../../../src/usecases/months/read-month-gaps.ts";

/** The items of a month that are about lines and imports: kind, count, whether they block, units, and places of lines. */
export async function lineItems(act: Act, month: string): Promise<string[]> {
  const { gaps } = await readMonthGaps(act, { month: monthText.parse(month) });
  return gaps
    .filter(({ kind }) => /^(rejected|marked|dropped|import)/.test(kind))
    .map(({ kind, count, blocks, sentence, lines }) => {
      const places = lines.map(({ file, line }) => `${file}:${line}`).join(" ");
      return `${kind} ${count}${blocks ? " blocks" : ""} | ${sentence.replace(/^.*?\.(?= Unit| Month|$)/, "").trim()} | ${places}`;
    });
}
