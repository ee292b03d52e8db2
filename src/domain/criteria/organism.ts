import type { OrganismGroup } from "../../../shared/culture-words.ts";

/** What an organism is, as far as the definitions tell organisms apart. */
export interface OrganismIdentity {
  /** The canonical name; two names of one organism have the same key. */
  readonly key: string;
  /** null: nobody has said what it is. */
  readonly group: OrganismGroup | null;
  /** null where the name is no genus or species, such as "Gram-negative rods". */
  readonly genus: string | null;
  /** A common commensal of the skin: one positive blood specimen may be a contamination. */
  readonly isCommensal?: boolean;
  /** A uropathogen in the sense of UTI-B: Gram-negative, or Staphylococcus saprophyticus. */
  readonly isUropathogen?: boolean;
}

/** The identity of an organism that is not on the list and for which a person chose the group. */
export function chosenOrganism(name: string, group: OrganismGroup): OrganismIdentity {
  return { key: name.trim(), group, genus: null };
}
