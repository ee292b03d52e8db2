/**
 * A knip reporter that says how many files knip read: "no findings" from a check that read nothing is worth nothing.
 * @param {{ counters: { total: number } }} report
 */
export default function printCount({ counters }) {
  process.stdout.write(`looked at ${counters.total} files\n`);
}
