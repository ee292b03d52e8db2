/** The first of a list; a test that expects one fails without it. */
export function firstOf<T>(list: readonly T[]): T {
  const [first] = list;
  if (first === undefined) throw new Error("the list is empty");
  return first;
}
