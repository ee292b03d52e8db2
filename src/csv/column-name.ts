/** A column's name as layouts spell it: lower case, with underscores in place of spaces and hyphens. */
export function columnName(cell: string): string {
  return cell
    .trim()
    .toLowerCase()
    .replace(/[\s_-]+/g, "_");
}
