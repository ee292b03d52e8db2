/** The least share of mutants that the tests have to kill. */
export const leastKilled = 0.9;

/**
 * @typedef {object} Mutant as Stryker reports it (mutation-testing-report-schema)
 * @property {string} status
 * @property {string} mutatorName
 * @property {string} [replacement]
 * @property {{ start: Place, end: Place }} location
 */

/** @typedef {{ line: number, column: number }} Place both counted from 1 */

/** @typedef {{ files: Record<string, { source: string, mutants: Mutant[] }> }} Report */

/** @typedef {{ reason: string, mutants: string[] }[]} Explained mutants that nothing kills, and why that is right */

/**
 * The part of a report that was asked for: Stryker reports what it knows of other files too. A pattern stands for what
 * begins as it does before its first star; without patterns everything was asked for.
 * @param {Report} report
 * @param {string[]} patterns
 * @returns {Report}
 */
export function chosenPart(report, patterns) {
  if (patterns.length === 0) return report;
  const beginnings = patterns.map((pattern) => pattern.split("*")[0] ?? "");
  const files = Object.entries(report.files).filter(([file]) => beginnings.some((begin) => file.startsWith(begin)));
  return { files: Object.fromEntries(files) };
}

/**
 * What a run comes to. A mutant that never ends counts as killed, one that no test runs into as alive; what was left
 * out counts nowhere.
 * @param {Report} report
 * @param {Explained} explained
 */
export function verdictOf(report, explained) {
  const mutants = Object.entries(report.files).flatMap(([file, { source, mutants: all }]) =>
    all.map((mutant) => ({ file, name: nameOf(file, source, mutant), ...mutant })),
  );
  const killed = mutants.filter(({ status }) => status === "Killed" || status === "Timeout").length;
  const alive = mutants.filter(({ status }) => status === "Survived" || status === "NoCoverage");
  const known = new Set(explained.flatMap((group) => group.mutants));
  const names = new Set(alive.map(({ name }) => name));
  const ran = Object.keys(report.files);
  return {
    killed,
    total: killed + alive.length,
    unexplained: alive.filter(({ name }) => !known.has(name)),
    gone: [...known].filter((name) => !names.has(name) && ran.some((file) => name.startsWith(`${file}: `))),
  };
}

/**
 * A mutant by its file, its line and what became of it; line numbers would change with every edit above.
 * @param {string} file
 * @param {string} source
 * @param {Mutant} mutant
 */
function nameOf(file, source, { location: { start, end }, replacement = "" }) {
  const lines = source.split("\n");
  const line = lines[start.line - 1] ?? "";
  const part = start.line === end.line ? line.slice(start.column - 1, end.column - 1) : line.slice(start.column - 1);
  return `${file}: ${line.trim()} [${part} -> ${oneLine(replacement)}]`;
}

/** @param {string} text */
function oneLine(text) {
  return text.replace(/\s+/g, " ").slice(0, 300);
}
