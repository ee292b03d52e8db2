import type { Instant } from "../domain/days/day-number.ts";
import { idList } from "./bulk.ts";
import type { Read } from "./store.ts";

/** The parameters of a statement of our own: each call notes a value and returns the SQL that stands for it. */
export interface Parameters {
  readonly values: (number | string)[];
  given(value: number | string, type: "int" | "bigint" | "text" | ""): string;
  instant(at: Instant): string;
  /** A list for `IN`. */
  ids(list: readonly number[]): string;
}

/** Parameters for one database, in the order in which they stand in the statement. */
export function parametersFor({ kind }: Pick<Read, "kind">): Parameters {
  const values: (number | string)[] = [];
  const given = (value: number | string, type: string): string => {
    values.push(value);
    return kind === "sqlite" ? `$${values.length}` : `$${values.length}::${type}`;
  };
  return {
    values,
    given,
    instant: (at) =>
      kind === "sqlite"
        ? given(at, "")
        : `(timestamp 'epoch' + ${given(String(at), "bigint")} * interval '1 millisecond')`,
    ids: (list) => idList({ kind }, values.push(JSON.stringify(list))),
  };
}
