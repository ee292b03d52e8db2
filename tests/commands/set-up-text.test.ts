import { expect, it } from "vitest";
import { setUpText } from "../../src/commands/set-up-text.ts";

it("names what the first set-up fixes, in one line", () => {
  const facility = { name: "Alder Bay Hospital", zone: "America/Nuuk", censusTime: "24:00" };
  const said = setUpText({ facility });
  expect(said).toBe(
    'Setting up "Alder Bay Hospital": time zone America/Nuuk, daily census at 24:00. ' +
      "The zone cannot change after the first admission.",
  );
});
