/** Throws a plain Error (a bug of the caller) unless the value is a finite amount of zero or more. */
export function assertAmount(name: string, value: number): void {
  if (!Number.isFinite(value) || value < 0) throw new Error(`${name} must be zero or more, not ${value}`);
}

/** Throws a plain Error (a bug of the caller) unless the value is a whole number of zero or more. */
export function assertCount(name: string, value: number): void {
  if (!Number.isSafeInteger(value) || value < 0) {
    throw new Error(`${name} must be a whole number of zero or more, not ${value}`);
  }
}
