import { it } from "vitest";
import { openStore } from "../../src/store/open-store.ts";
import { freshSqlite } from "../databases/databases.ts";
import { tally } from "./outcome-summary.ts";
import { kinds, randomHospital } from "./random-hospital.ts";
import { openReader } from "./read-record.ts";

it("x", async () => {
  const db = await freshSqlite();
  const stores = [openStore(db.url)];
  const reader = await openReader(db);
  const all = [];
  for (let s = 1; s <= 40; s++) {
    const r = await randomHospital({ stores, reader }, s);
    all.push(...r.outcomes);
    if (s < 4) console.log(r.outcomes.map((o) => `${o.concurrent ? "||" : ""}${o.result}: ${o.said}`).join("\n"));
  }
  for (const k of kinds) console.log(k.name, JSON.stringify(tally(all, k.name)));
}, 600000);
