import { expect, it } from "vitest";
import { determine, timelineOf } from "../../../src/domain/criteria/index.ts";
import { us2024 } from "../../../src/domain/editions/us-2024.ts";

const grew = [["Escherichia coli", ">100000"]] as const;

it("a sign that counts keeps an infection from being without symptoms, though no other criterion is met by it", () => {
  const options = { ...us2024.options, earlyFeverOver65: "dates-the-event" } as const;
  const timeline = timelineOf({
    ageYears: 70,
    catheters: [[8, null]],
    urine: [{ day: 10, grew }],
    blood: [{ day: 10, grew }],
    signs: [
      { day: 9, sign: "38.4" },
      { day: 10, sign: "38.6" },
    ],
  });
  const [found] = determine(timeline, { ...us2024, options });
  expect([found?.outcome, found?.derivation.at(-1)]).toEqual([
    "not-met",
    expect.objectContaining({
      rule: "abuti",
      status: "failed",
      sentence: expect.stringContaining("there was a sign, a temperature of 38.6 °C on 10 March 2024."),
      evidence: [{ kind: "sign", id: 2 }],
    }),
  ]);
});
