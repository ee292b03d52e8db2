/** The words of a closed list with the labels that a person reads, in their order. */
export function choicesOf<T extends string>(
  values: readonly T[],
  labelOf: (value: T) => string,
): { readonly value: T; readonly label: string }[] {
  return values.map((value) => ({ value, label: labelOf(value) }));
}
