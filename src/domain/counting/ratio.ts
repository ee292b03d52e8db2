/** A quotient, or null with the reason in words when its denominator is 0. Never NaN, never infinite. */
export type Ratio = { readonly value: number } | { readonly value: null; readonly reason: string };
