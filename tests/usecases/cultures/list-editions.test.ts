import { describe, expect, it } from "vitest";
import { readEdition as endpoint, listEditions as listEndpoint } from "../../../shared/api/editions.ts";
import { listEditions, readEdition } from "../../../src/usecases/cultures/list-editions.ts";

const editionOf = (editionId: "us-2024" | "ecdc-2017") => endpoint.output.parse(readEdition({ editionId }));

describe("the published editions", () => {
  it("tell their source, days, rules and open points", () => {
    const { editions } = listEndpoint.output.parse(listEditions());
    expect(editions.map(({ editionId, inForce }) => [editionId, inForce.from])).toEqual([
      ["us-2024", "2024-01-01"],
      ["ecdc-2017", "2017-01-01"],
    ]);
    for (const { editionId } of editions) {
      const { rules, openPoints } = editionOf(editionId);
      expect(openPoints.length).toBeGreaterThan(0);
      for (const { ruleId, sources } of rules) expect(sources.length, ruleId).toBeGreaterThan(0);
    }
  });

  it("tell an example as the patient's story, what it comes to, and the sentences of its derivation", () => {
    const { rules } = editionOf("us-2024");
    const examples = rules.find(({ ruleId }) => ruleId === "suti-1a")?.examples ?? [];
    expect(new Set(examples.map(({ status }) => status))).toEqual(new Set(["held", "failed", "cannot-tell"]));
    expect(examples[0]).toMatchObject({
      story: [
        "Ward 1 from 1 March 2024.",
        "Indwelling urethral catheter from 2 March 2024, still in place.",
        "Urine of 10 March 2024: Escherichia coli, >100000.",
        "Temperature 38.4 °C on 10 March 2024.",
      ],
      status: "held",
      sentences: [expect.stringContaining("38.4 °C on 10 March 2024")],
    });
  });

  it("tell every part of a story that an example has: no sentence lacks a word", () => {
    const both = [editionOf("us-2024"), editionOf("ecdc-2017")];
    const sentences = both.flatMap(({ rules }) =>
      rules.flatMap(({ examples }) => examples.flatMap((one) => one.story)),
    );
    expect(sentences.filter((one) => /undefined|NaN|null|\[object/.test(one))).toEqual([]);
    for (const part of ["Aged ", "Blood of ", "Admitted again", "The patient died", "organ donation"]) {
      expect(
        sentences.some((one) => one.includes(part)),
        part,
      ).toBe(true);
    }
  });
});
