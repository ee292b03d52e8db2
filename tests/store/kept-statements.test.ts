import Database from "better-sqlite3";
import { afterEach, beforeEach, expect, it } from "vitest";
import { keepStatements } from "../../src/store/kept-statements.ts";

let client: Database.Database;
let prepared: string[];

beforeEach(() => {
  client = new Database(":memory:");
  client.exec("CREATE TABLE seen (id INTEGER, name TEXT)");
  prepared = [];
  const prepare = client.prepare.bind(client);
  Object.assign(client, {
    prepare: (sql: string) => {
      prepared.push(sql);
      return prepare(sql);
    },
  });
  keepStatements(client);
});

afterEach(() => client.close());

const insert = "INSERT INTO seen VALUES (?, ?)";
const byId = "SELECT name FROM seen WHERE id = ?";
const all = (sql: string, ...values: unknown[]) => client.prepare(sql).bind(values).raw().all();

it("prepares a text once, and runs it with the values of each call", () => {
  for (const [id, name] of [
    [1, "first"],
    [2, "second"],
  ])
    client.prepare(insert).bind([id, name]).run();
  expect([all(byId, 2), all(byId, 1), all(byId, 3)]).toEqual([[["second"]], [["first"]], []]);
  expect(prepared).toEqual([insert, byId]);
});

it("keeps the values of two that are bound before either runs", () => {
  const [one, other] = [client.prepare(insert).bind([1, "one"]), client.prepare(insert).bind([2, "other"])];
  other.run();
  one.run();
  expect(all("SELECT id, name FROM seen ORDER BY id")).toEqual([
    [1, "one"],
    [2, "other"],
  ]);
});

it("says what a statement answers with, also after the table changed", () => {
  const columns = () =>
    client
      .prepare("SELECT * FROM seen")
      .bind([])
      .columns()
      .map(({ name }) => name);
  expect(all("SELECT * FROM seen")).toEqual([]);
  client.exec("ALTER TABLE seen ADD COLUMN ward TEXT");
  client.prepare("INSERT INTO seen VALUES (?, ?, ?)").bind([1, "one", "3E"]).run();
  expect(all("SELECT * FROM seen")).toEqual([[1, "one", "3E"]]);
  expect(columns()).toEqual(["id", "name", "ward"]);
});

it("forgets the text that was used least recently, and keeps no very long one", () => {
  all(byId, 1);
  for (let i = 0; i < 399; i++) all(`SELECT ${i}`);
  all(byId, 1);
  all("SELECT 'one more'");
  all("SELECT 0");
  all(byId, 1);
  expect(prepared.filter((sql) => sql === byId)).toHaveLength(1);
  expect(prepared.filter((sql) => sql === "SELECT 0")).toHaveLength(2);
  const list = `SELECT id FROM seen WHERE id IN (${Array.from({ length: 2_100 }, () => "1").join(",")})`;
  all(list);
  all(list);
  expect(prepared.filter((sql) => sql === list)).toHaveLength(2);
});
