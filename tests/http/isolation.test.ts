import { afterAll, beforeAll, describe, expect, it } from "vitest";
import { endpoints } from "../../shared/api/index.ts";
import { call } from "../../shared/call.ts";
import type { Endpoint } from "../../shared/endpoint.ts";
import type { Permission } from "../../shared/permissions.ts";
import { AnsweredProblem, type ProblemDocument } from "../../shared/problem-document.ts";
import { onEachDatabase } from "../databases/databases.ts";
import type { AlderBay } from "./alder-bay.ts";
import { type Door, openDoor } from "./door.ts";
import { inputs } from "./inputs.ts";
import { fresh as freshName, type Situations, situationsIn } from "./situations.ts";
import type { Subjects } from "./subjects.ts";

type Person = Exclude<keyof AlderBay["people"], "elsewhere">;
type Extent = "facility" | "own wards" | "nothing";

/** What each role may do, in the words in which the roles are described to users. */
const may: Readonly<Record<Person, (permission: Permission) => Extent>> = {
  prevention: () => "facility",
  bedside: (permission) => {
    if (["see-own-account", "see-facility", "see-baselines"].includes(permission)) return "facility";
    const own = [
      "see-wards",
      "see-counts",
      "see-patients",
      "see-policy",
      "record-care",
      "count-by-hand",
      "see-changes",
    ];
    return own.includes(permission) ? "own wards" : "nothing";
  },
  manager: (permission) => {
    if (["see-own-account", "see-facility", "see-baselines", "compare-wards"].includes(permission)) return "facility";
    return ["see-wards", "see-counts", "see-policy"].includes(permission) ? "own wards" : "nothing";
  },
  administrator: (permission) => {
    const sees = ["see-own-account", "see-facility", "see-wards", "see-policy", "see-audit"];
    const all = [...sees, "set-policy", "set-wards", "set-facility", "import-records"];
    if (["see-baselines", "set-baselines"].includes(permission)) return "facility";
    return all.includes(permission) ? "facility" : "nothing";
  },
};

/** Whether people of ward 3E reach what a situation is about. */
const reached: Readonly<Record<keyof Situations, { ownWard: boolean; facility: boolean }>> = {
  "own ward": { ownWard: true, facility: true },
  "other ward": { ownWard: false, facility: true },
  "moved out today": { ownWard: true, facility: true },
  "moved out long ago": { ownWard: false, facility: true },
  "discharged today": { ownWard: true, facility: true },
  "discharged long ago": { ownWard: false, facility: true },
  "other facility": { ownWard: false, facility: false },
  absent: { ownWard: false, facility: false },
};

/** The status that a call must meet; "reached" for any answer of the use case itself. */
function expectedOf(endpoint: Endpoint, person: Person, situation: keyof Situations): 403 | 404 | "reached" {
  const extent = may[person](endpoint.permission);
  if (extent === "nothing") return 403;
  if (endpoint.wards === "none" || endpoint.wards === "facility") return "reached";
  // A ward is not left and not discharged from: only where it lies matters.
  const { ownWard, facility } = reached[situation];
  return (extent === "facility" ? facility : ownWard) ? "reached" : 404;
}

onEachDatabase("who reaches whose record", (fresh) => {
  let door: Door;
  let base: string;
  let situations: Situations;

  beforeAll(async () => {
    door = await openDoor(await fresh());
    base = await door.app.listen({ host: "127.0.0.1", port: 0 });
    situations = await situationsIn(door.hospital);
  });
  afterAll(() => door?.close());

  async function ask(name: keyof typeof endpoints, person: Person, about: Subjects): Promise<ProblemDocument | null> {
    const headers = { "x-demo-person": String(door.hospital.people[person]) };
    try {
      // Nothing is to change here: the time lies before everything, and nobody saw that version.
      const input = inputs[name]({ ...about, at: "2020-01-01T00:00:00Z" });
      const asked = Object.assign({}, input, { seenVersion: 999 }) as never;
      await call(endpoints[name] as Endpoint, asked, { base, headers, key: freshName() });
      return null;
    } catch (error) {
      if (!(error instanceof AnsweredProblem)) throw error;
      return error.document;
    }
  }

  const people = Object.keys(may) as Person[];
  const cases = (Object.keys(endpoints) as (keyof typeof endpoints)[]).flatMap((name) =>
    people.map((person) => [name, person] as const),
  );

  it.each(cases)("%s as %s", async (name, person) => {
    const endpoint: Endpoint = endpoints[name];
    const absent = await ask(name, person, situations.absent);
    for (const [situation, about] of Object.entries(situations) as [keyof Situations, Subjects][]) {
      const expected = expectedOf(endpoint, person, situation);
      const answer = situation === "absent" ? absent : await ask(name, person, about);
      const status = answer === null ? 200 : answer.status;
      // The number of the merge, scope or source is one that nobody gave: the use case itself says so.
      const own = [
        "no such merge",
        "no such surveillance of this unit",
        "no such import source of this facility",
        "no such alias of this import source",
        "no such confirmation of this unit",
        "no such signature of this month",
        "no choice for this wording",
      ];
      const isOwn = own.some((text) => answer?.detail === `There is ${text}.`);
      const ownAnswer = isOwn ? 200 : status;
      if (expected === "reached") expect([403, 404], `${situation}: ${answer?.detail}`).not.toContain(ownAnswer);
      else expect([situation, status]).toEqual([situation, expected]);
      // What is hidden is answered exactly as what was never there.
      if (expected === 404) expect({ ...answer, instance: "" }).toEqual({ ...absent, instance: "" });
    }
  });
});

describe("the table", () => {
  it("has a record that each scope can name, and hides something from everyone who is not of the facility", () => {
    const scopes = new Set(Object.values(endpoints).map((one: Endpoint) => one.wards));
    expect([...scopes].sort()).toEqual([
      "case",
      "catheter",
      "facility",
      "finding",
      "import",
      "none",
      "note",
      "patient",
      "sign",
      "specimen",
      "stay",
      "ward",
      "ward-stay",
    ]);
    expect(Object.values(reached).filter(({ facility }) => !facility)).toHaveLength(2);
  });
});
