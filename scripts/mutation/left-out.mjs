/** Of a rule: what it tells people, and its worked examples, which tests/domain/criteria/rules.test.ts runs. */
const toldByRules = new Set(["title", "says", "sources", "inForce", "examples"]);
/** Expressions in a text that hold nothing to mutate but perhaps the text of a call's arguments. */
const plainExpression = /^(Identifier|MemberExpression|CallExpression)$/;

/**
 * @typedef {object} Node a node of the source's syntax tree, as far as it is asked here
 * @property {string} type
 * @property {{ name?: string }} [key]
 * @property {unknown} [value]
 * @property {{ value: { raw: string } }[]} [quasis]
 * @property {{ type: string }[]} [expressions]
 */

/**
 * Why nothing in a part of the source is mutated; nothing for what is.
 * @param {{ node: Node, getFunctionParent: () => unknown }} path
 * @returns {string | undefined}
 */
function whyLeftOut(path) {
  const { type, key, value, quasis = [], expressions = [] } = path.node;
  if (type === "ObjectProperty" && toldByRules.has(key?.name ?? "") && path.getFunctionParent() === null)
    return "what a rule tells people";
  if (type === "StringLiteral" && String(value).includes(" ")) return "prose";
  const isPlain = expressions.every((one) => plainExpression.test(one.type));
  if (type === "TemplateLiteral" && isPlain && quasis.some((text) => text.value.raw.includes(" "))) return "prose";
}

/** The plugin by which Stryker leaves out data and prose. */
export const strykerPlugins = [{ kind: "Ignore", name: "left-out", value: { shouldIgnore: whyLeftOut } }];
