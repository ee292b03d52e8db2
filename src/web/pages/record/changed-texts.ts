/** The texts of a form that a person changed: what was not touched is not sent, so that times keep their seconds. */
export function changedTexts<T extends Readonly<Record<string, string | null>>>(before: T, after: T): Partial<T> {
  const names = Object.keys(before) as (keyof T)[];
  return Object.fromEntries(
    names.filter((name) => before[name] !== after[name]).map((name) => [name, after[name]]),
  ) as Partial<T>;
}
