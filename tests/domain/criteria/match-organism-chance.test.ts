import fc from "fast-check";
import { expect, it } from "vitest";
import { listedOrganisms, matchOrganism, proposedOrganism } from "../../../src/domain/criteria/index.ts";

const listed = listedOrganisms();
const species = listed.filter(({ key, genus }) => genus !== null && /^[A-Z][a-z]+ [a-z]+$/.test(key));
const one = fc.constantFrom(...species);
const cased = fc.constantFrom<(text: string) => string>(
  (text) => text,
  (text) => text.toUpperCase(),
  (text) => text.toLowerCase(),
  (text) => ` ${text.replace(" ", "  ")} `,
);
const before = fc.constantFrom(
  "",
  "Presumptive ",
  "Probable ",
  "ESBL-producing ",
  "Heavy growth of ",
  ">100,000 CFU/mL ",
);
const after = fc.constantFrom(
  ...["", " (ESBL)", ", MDR", " - presumptive identification", " complex", " #2", " (presumptive)", ", final"],
  ...[" 50,000-100,000 CFU/mL", " by MALDI-TOF", ", multi-drug resistant", " isolate 1"],
);

/** As many as fast-check draws by itself; fewer where each small change of the program runs them. */
const drawn = { numRuns: Number(process.env.CHANGED ?? 100) };

/** The key of a name of the list, which may have another name as its own. */
const keyOf = (name: string) => matchOrganism(name)?.key;

it("every name of the list is itself, however it is written and whatever is said beside it", () => {
  fc.assert(
    fc.property(one, cased, before, after, ({ key }, write, start, end) => {
      expect(keyOf(write(`${start}${key}${end}`))).toBe(keyOf(key));
    }),
    drawn,
  );
});

it("a name that is denied, doubted or not alone is not read", () => {
  const doubt = fc.constantFrom<(name: string, other: string) => string>(
    ...[(name: string) => `No ${name} isolated`, (name: string) => `Not ${name}`, (name: string) => `?${name}`],
    ...[(name: string) => `Possible ${name}`, (name: string) => `Rule out ${name}`, (name: string) => `${name}?`],
    ...[(name: string) => `${name} not isolated`, (name: string) => `${name} (mixed with flora)`],
    ...[(name: string, other: string) => `${name} and ${other}`, (name: string, other: string) => `${name}, ${other}`],
    ...[
      (name: string, other: string) => `${name} (or ${other})`,
      (name: string, other: string) => `${name} + ${other}`,
    ],
  );
  fc.assert(
    fc.property(doubt, one, one, (write, { key }, { key: other }) => {
      fc.pre(key !== other);
      expect(matchOrganism(write(key, other))).toBeNull();
    }),
    drawn,
  );
});

it("one wrong letter in a species never makes it another, and the right name is offered where it is the only one", () => {
  const letter = fc.constantFrom(..."abcdefghijklmnopqrstuvwxyz");
  const known = new Set(species.map(({ key }) => key.toLowerCase()));
  fc.assert(
    fc.property(one, fc.nat(30), letter, ({ key }, at, wrong) => {
      const from = key.indexOf(" ") + 1;
      const place = from + (at % (key.length - from));
      const written = `${key.slice(0, place)}${wrong}${key.slice(place + 1)}`;
      fc.pre(written !== key && !known.has(written.toLowerCase()));
      expect(keyOf(written)).toBeUndefined();
      const offered = proposedOrganism(written);
      if (offered) expect(offered.genus).toBe(matchOrganism(key)?.genus);
    }),
    drawn,
  );
});

it("any text is read or waits, and blanks around it change nothing", () => {
  const text = fc.oneof(fc.string(), fc.string({ unit: fc.constantFrom(..."abceilmnoprstu ()[]+/?.,-#0123<>") }));
  fc.assert(
    fc.property(text, (name) => {
      expect(matchOrganism(`  ${name} `)).toEqual(matchOrganism(name));
    }),
    drawn,
  );
});
