/**
 * A laboratory's wording in the form in which wordings are compared: case, accents, hyphens, dots, commas and blanks make
 * no difference. What stands in brackets stays: it may be what decides.
 */
export function plainOrganismName(name: string): string {
  return name
    .normalize("NFKD")
    .replace(/[\u0300-\u036f]/g, "")
    .toLowerCase()
    .replace(/haemoly/g, "hemoly")
    .replace(/\((s|es|ae|i|cocci|bacilli|rods)\)/g, "")
    .replace(/[-‐‑‒–—._,;:"'“”*]/g, " ")
    .replace(/[()[\]]/g, (bracket) => ` ${bracket} `)
    .replace(/\+/g, " +")
    .replace(/\s+/g, " ")
    .trim();
}
