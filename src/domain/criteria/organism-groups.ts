/**
 * Genera all of whose species are common commensals, but for the species named, and species that are: CDC Patient
 * Safety Component Manual, chapter 4 (list of common commensals, from memory: diphtheroids, Bacillus but not anthracis,
 * Cutibacterium, coagulase-negative staphylococci, viridans streptococci, Aerococcus, Micrococcus, Rhodococcus).
 */
export const commensalGenera: Readonly<Record<string, readonly string[]>> = {
  Aerococcus: [],
  Bacillus: ["anthracis"],
  Corynebacterium: ["diphtheriae"],
  Cutibacterium: [],
  Micrococcus: [],
  Rhodococcus: [],
  Staphylococcus: ["argenteus", "aureus", "hyicus", "intermedius", "pseudintermedius", "schleiferi"],
};
export const viridansStreptococci =
  "anginosus, constellatus, cristatus, gordonii, infantis, intermedius, mitis, mutans, oralis, parasanguinis, salivarius, sanguinis, sobrinus, vestibularis";

const species = (genus: string, names: string): string[] => names.split(" ").map((name) => `${genus} ${name}`);

/**
 * Names that cover several species, each with what it covers: genera, or species as `Genus species`. With a `genus`, a
 * report of that genus alone can be the same.
 */
export const coveringNames: Readonly<
  Record<
    string,
    { group: "bacterium" | "yeast-or-mold"; genus: string | null; commensal: boolean; covers: readonly string[] }
  >
> = {
  "Coagulase-negative staphylococci": {
    ...{ group: "bacterium", genus: "Staphylococcus", commensal: true },
    covers: species(
      "Staphylococcus",
      "auricularis capitis caprae cohnii epidermidis haemolyticus hominis lentus lugdunensis pasteuri pettenkoferi saccharolyticus saprophyticus sciuri simulans vitulinus warneri xylosus",
    ),
  },
  "Viridans group streptococci": {
    ...{ group: "bacterium", genus: "Streptococcus", commensal: true },
    covers: viridansStreptococci.split(", ").map((name) => `Streptococcus ${name}`),
  },
  "Streptococcus bovis group": {
    ...{ group: "bacterium", genus: "Streptococcus", commensal: false },
    covers: species("Streptococcus", "equinus gallolyticus infantarius lutetiensis pasteurianus"),
  },
  "Bacillus not anthracis": { group: "bacterium", genus: "Bacillus", commensal: true, covers: [] },
  "Corynebacterium not diphtheriae": { group: "bacterium", genus: "Corynebacterium", commensal: true, covers: [] },
  Diphtheroids: { group: "bacterium", genus: null, commensal: true, covers: ["Corynebacterium"] },
};
