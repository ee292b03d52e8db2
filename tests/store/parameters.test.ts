import { describe, expect, it } from "vitest";
import { parametersFor } from "../../src/store/parameters.ts";
import { onEachDatabase } from "../databases/databases.ts";
import { sharedStore } from "../databases/shared-store.ts";

describe("parameters", () => {
  it("stand in the statement in the order in which they were noted", () => {
    const { values, given, instant, ids } = parametersFor({ kind: "postgresql" });
    expect([given(7, "int"), given("a", "text"), ids([3])]).toEqual([
      "$1::int",
      "$2::text",
      "(SELECT value::int FROM jsonb_array_elements_text($3::jsonb))",
    ]);
    expect(instant(0)).toContain("$4::bigint");
    expect(values).toEqual([7, "a", "[3]", "0"]);
    expect(parametersFor({ kind: "sqlite" }).given(7, "int")).toBe("$1");
  });
});

onEachDatabase("a statement with parameters", (fresh) => {
  const shared = sharedStore(fresh);

  it("compares instants, numbers and lists", async () => {
    const rows = await shared.store.read((read) => {
      const { values, given, instant, ids } = parametersFor(read);
      const is = `${given(2, "int")} IN ${ids([1, 2])} AND ${instant(0)} < ${instant(1)}`;
      return read.sql.rows<{ found: number }>(`SELECT 1 AS found WHERE ${is}`, ...values);
    });
    expect(rows.map(({ found }) => Number(found))).toEqual([1]);
  });
});
