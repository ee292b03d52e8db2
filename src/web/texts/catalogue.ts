import i18next from "i18next";
import { language, pseudoLanguage } from "./language.ts";
import { pseudo } from "./pseudo.ts";

type Texts = Readonly<Record<string, string>>;
/** The names between braces in a text. */
type Holes<Text> = Text extends `${string}{{${infer Hole}}}${infer Rest}` ? Hole | Holes<Rest> : never;
/** `rows_one` and `rows_other` are the two forms of `rows`, chosen by the value `count`. */
type Name<Key> = Key extends `${infer Base}_${"one" | "other"}` ? Base : Key;
type TextNamed<All extends Texts, Key extends string> = Key extends keyof All ? All[Key] : All[`${Key}_other`];
type Values<Text> = [Holes<Text>] extends [never]
  ? []
  : [values: { readonly [Hole in Holes<Text>]: Hole extends "count" ? number : string | number }];

/** Finds a text by its name and puts the values into its braces. What is not there does not compile. */
export type TextOf<All extends Texts> = <Key extends Name<keyof All & string>>(
  key: Key,
  ...values: Values<TextNamed<All, Key>>
) => string;

/**
 * The texts of one page or part under a name of their own, which is loaded with it. In the pseudo-language every text is
 * made longer and gets accents, so that a text that is not in a catalogue shows.
 */
export function catalogue<const All extends Texts>(name: string, texts: All): TextOf<All> {
  const shown = language === pseudoLanguage ? pseudoTexts(texts) : texts;
  i18next.addResourceBundle(language, name, shown, true, true);
  // A text without values is always the same, and a page of cards says each of them many times.
  const plain = new Map<string, string>();
  return (key, ...[values]) => {
    if (values !== undefined) return i18next.t(key, { ...(values as object), ns: name });
    const known = plain.get(key) ?? i18next.t(key, { ns: name });
    plain.set(key, known);
    return known;
  };
}

function pseudoTexts(texts: Texts): Texts {
  return Object.fromEntries(Object.entries(texts).map(([key, text]) => [key, pseudo(text)]));
}

void i18next.init({
  lng: language,
  fallbackLng: false,
  initAsync: false,
  resources: {},
  keySeparator: false,
  nsSeparator: false,
  // React escapes what it shows.
  interpolation: { escapeValue: false },
});
