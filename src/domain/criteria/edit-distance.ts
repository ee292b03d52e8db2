/** How many letters have to be put in, left out, replaced or exchanged with the next to make one text of another. */
export function editDistance(a: string, b: string): number {
  let before: number[] = [];
  let last = Array.from({ length: b.length + 1 }, (_, j) => j);
  for (let i = 1; i <= a.length; i += 1) {
    const row = [i];
    for (let j = 1; j <= b.length; j += 1) {
      const isSame = a[i - 1] === b[j - 1];
      const least = Math.min(
        (last[j] as number) + 1,
        (row[j - 1] as number) + 1,
        (last[j - 1] as number) + (isSame ? 0 : 1),
      );
      const isExchanged = i > 1 && j > 1 && a[i - 1] === b[j - 2] && a[i - 2] === b[j - 1];
      row.push(isExchanged ? Math.min(least, (before[j - 2] as number) + 1) : least);
    }
    before = last;
    last = row;
  }
  return last[b.length] as number;
}
