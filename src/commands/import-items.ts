import { fingerprint } from "../csv/fingerprint.ts";
import type { CsvItem } from "../csv/items.ts";
import type { IntakeItem } from "../usecases/intake/intake-item.ts";

/** Lines of the CSV door as the import takes them; notices are told to the person at once. */
export async function* itemsFrom(
  items: AsyncIterable<CsvItem>,
  notice: (text: string) => void,
): AsyncIterable<IntakeItem> {
  for await (const item of items) {
    if (item.type === "notice") notice(`${item.file === null ? "" : `${item.file}: `}${item.detail}\n`);
    else if (item.type === "line") yield { ...item, fingerprint: fingerprint(item) };
    else yield item;
  }
}
