import { expect, it } from "vitest";
import { abuti } from "../../../src/domain/criteria/abuti.ts";
import { determine, timelineOf } from "../../../src/domain/criteria/index.ts";
import { us2024 } from "../../../src/domain/editions/us-2024.ts";

const grew = [["Escherichia coli", ">100000"]] as const;

it("a sign keeps an infection from being without symptoms, even where no other criterion is asked", () => {
  const timeline = timelineOf({
    catheters: [[8, null]],
    urine: [{ day: 10, grew }],
    blood: [{ day: 10, grew }],
    signs: [{ day: 10, sign: "38.6" }],
  });
  const [found] = determine(timeline, { ...us2024, criteria: [abuti] });
  expect([found?.outcome, found?.derivation.at(-1)]).toEqual([
    "not-met",
    expect.objectContaining({
      rule: "abuti",
      status: "failed",
      sentence: expect.stringContaining("there was a sign, a temperature of 38.6 °C on 10 March 2024."),
      evidence: [{ kind: "sign", id: 1 }],
    }),
  ]);
});
