import { describe, expect, it } from "vitest";
import {
  chosenOrganism,
  listedOrganisms,
  matchOrganism,
  type OrganismIdentity,
  otherKnownNames,
  sameOrganism,
} from "../../../src/domain/criteria/index.ts";

const known = (name: string): OrganismIdentity => {
  const identity = matchOrganism(name);
  if (!identity) throw new Error(`${name} is not on the list`);
  return identity;
};

describe("names of organisms", () => {
  it.each([
    ["E. coli", "Escherichia coli", "bacterium"],
    ["ESCHERICHIA COLI", "Escherichia coli", "bacterium"],
    ["Escherichia coli (ESBL)", "Escherichia coli", "bacterium"],
    ["Klebsiella spp.", "Klebsiella", "bacterium"],
    ["Enterobacter aerogenes", "Klebsiella aerogenes", "bacterium"],
    ["STAPH AUREUS COAG +", "Staphylococcus aureus", "bacterium"],
    ["STAPHYLOCOCCUS, COAGULASE NEGATIVE", "Coagulase-negative staphylococci", "bacterium"],
    ["Proteus terrae", "Proteus terrae", "bacterium"],
    ["yeast", "yeast", "yeast-or-mold"],
    ["Candida albicans", "Candida albicans", "yeast-or-mold"],
    ["Histoplasma capsulatum", "Histoplasma capsulatum", "yeast-or-mold"],
    ["Mixed urogenital flora", "mixed urogenital flora", "mixed-flora"],
    ["Trichomonas vaginalis", "Trichomonas vaginalis", "other"],
    ["Gram-negative rods", "gram negative rods", "bacterium"],
    ["Penicillium", "Penicillium", "yeast-or-mold"],
    ["Group B streptococcus", "Streptococcus agalactiae", "bacterium"],
    ["Klebsiella sp.", "Klebsiella", "bacterium"],
    ["Enterobacter cloacae complex", "Enterobacter cloacae", "bacterium"],
  ])("%s is %s, %s", (name, key, group) => {
    expect(known(name)).toMatchObject({ key, group });
  });

  it.each([
    "",
    "yeast albicans",
    "Diphtheroids albicans",
    "Escherichia coli andmore",
    "Escherichia 2coli",
    "Escherichia coli2",
    "something rare",
    "coli",
    "Escherichia and friends",
    "E. col",
  ])("%j is not guessed", (name) => {
    expect(matchOrganism(name)).toBeNull();
  });

  it.each([
    ["Klebsiella", "Klebsiella pneumoniae", true],
    ["Klebsiella oxytoca", "Klebsiella pneumoniae", false],
    ["Coagulase-negative staphylococci", "Staphylococcus epidermidis", true],
    ["Coagulase-negative staphylococci", "Staphylococcus aureus", false],
    ["Diphtheroids", "Corynebacterium striatum", true],
    ["viridans streptococci", "Streptococcus mitis", true],
    ["Gram-negative rods", "Escherichia coli", false],
  ])("%s and %s can be the same: %s", (a, b, same) => {
    expect([sameOrganism(known(a), known(b)), sameOrganism(known(b), known(a))]).toEqual([same, same]);
  });

  // CDC Patient Safety Component Manual, chapter 4, list of common commensals (from memory).
  it.each([
    ["Staphylococcus epidermidis", true],
    ["CoNS", true],
    ["Corynebacterium striatum", true],
    ["Bacillus cereus", true],
    ["Streptococcus mitis", true],
    ["Staphylococcus aureus", false],
    ["Corynebacterium diphtheriae", false],
    ["Bacillus anthracis", false],
    ["Streptococcus pneumoniae", false],
    ["Streptococcus", false],
    ["Staphylococcus", false],
    ["Corynebacterium", false],
    ["Bacillus", false],
    ["Micrococcus", true],
    ["Aerococcus", true],
    ["Escherichia coli", false],
  ])("%s is a common commensal: %s", (name, commensal) => {
    expect(known(name).isCommensal ?? false).toBe(commensal);
  });

  it("lists every organism once, by name, with its group", () => {
    const listed = listedOrganisms();
    const names = listed.map(({ key }) => key);
    expect(names).toEqual([...new Set(names)].sort());
    expect(listed.find(({ key }) => key === "Diphtheroids")).toEqual({
      key: "Diphtheroids",
      group: "bacterium",
      genus: null,
      isCommensal: true,
    });
    expect(listed.map(({ key, group }) => `${key}: ${group}`)).toEqual(
      expect.arrayContaining(["Escherichia coli: bacterium", "Candida auris: yeast-or-mold", "Trichomonas: other"]),
    );
    expect(names).not.toContain("");
  });

  // European definitions: Gram-negative, or Staphylococcus saprophyticus (ECDC HAI-Net ICU protocol 2.2, UTI-B).
  it.each([
    ["Escherichia coli", true],
    ["Staphylococcus saprophyticus", true],
    ["Staphylococcus epidermidis", false],
    ["Enterococcus faecalis", false],
    ["Candida albicans", false],
    ["Klebsiella", true],
    ["Enterococcus", false],
  ])("%s is a uropathogen: %s", (name, uropathogen) => {
    expect(known(name).isUropathogen).toBe(uropathogen);
  });

  it("takes the group that a person chose for a name that is not on the list", () => {
    const chosen = chosenOrganism(" Novelia rara ", "bacterium");
    expect(chosen).toEqual({ key: "Novelia rara", group: "bacterium", genus: null });
    expect(sameOrganism(chosen, chosenOrganism("Novelia rara", "bacterium"))).toBe(true);
  });
});

it("every other name that is offered as known is read, each once, by name", () => {
  const names = otherKnownNames();
  expect(names.filter((name) => matchOrganism(name) === null)).toEqual([]);
  expect(names).toEqual([...new Set(names)].sort());
  expect(names).toEqual(expect.arrayContaining(["e coli", "mixed flora", "yeast"]));
});
