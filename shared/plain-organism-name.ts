/** A name in the form in which names are compared: case, hyphens, dots, resistance in brackets and "species not told" make no difference. */
export function plainOrganismName(name: string): string {
  return name
    .toLowerCase()
    .replace(/\([^)]*\)/g, " ")
    .replace(/[-._,]/g, " ")
    .replace(/\b(species|spp|sp|ssp|nos|not otherwise specified|complex|group)\b\s*$/, "")
    .replace(/\s+/g, " ")
    .trim();
}
