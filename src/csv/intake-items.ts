import type { IntakeItem } from "../usecases/imports/intake-item.ts";
import { fingerprint } from "./fingerprint.ts";
import type { CsvItem, CsvNotice } from "./items.ts";

/** Lines of the CSV door as the import takes them; notices are told to the person at once, a line of text each. */
export function itemsFrom(items: AsyncIterable<CsvItem>, notice: (text: string) => void): AsyncIterable<IntakeItem> {
  return itemsAndNotices(items, ({ file, detail }) => notice(`${file === null ? "" : `${file}: `}${detail}\n`));
}

/** Lines of the CSV door as the import takes them; notices go beside. */
export async function* itemsAndNotices(
  items: AsyncIterable<CsvItem>,
  notice: (notice: CsvNotice) => void,
): AsyncIterable<IntakeItem> {
  for await (const item of items) {
    if (item.type === "notice") notice(item);
    else if (item.type === "line") yield { ...item, fingerprint: fingerprint(item) };
    else yield item;
  }
}
