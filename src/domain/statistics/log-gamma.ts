/** Lanczos' coefficients for g = 607/128 and 15 terms. Source: P. Godfrey, "A note on the computation of the convergent
 * Lanczos complex gamma approximation", 2001 (from memory; the tests hold the results against mpmath). */
const coefficients = [
  0.9999999999999971, 57.15623566586292, -59.59796035547549, 14.136097974741746, -0.4919138160976202,
  3.399464998481189e-5, 4.652362892704858e-5, -9.837447530487956e-5, 0.0001580887032249125, -0.00021026444172410488,
  0.00021743961811521265, -0.0001643181065367639, 8.441822398385275e-5, -2.6190838401581408e-5, 3.6899182659531625e-6,
];
const g = 607 / 128;

/** ln(sqrt(2 pi)). */
export const logSqrtTwoPi = 0.9189385332046728;

/**
 * The natural logarithm of the gamma function for x > 0.
 * Method: Lanczos' approximation. Special cases: none above zero; callers give nothing else.
 * Error: at most 1e-14 of the larger of 1 and the result for x of 0.01 to 1e6 (tests hold it against mpmath).
 */
export function logGamma(x: number): number {
  let sum = coefficients[0] ?? 0;
  for (let i = 1; i < coefficients.length; i++) sum += (coefficients[i] ?? 0) / (x + i);
  const t = x + g + 0.5;
  return (x + 0.5) * Math.log(t) - t + logSqrtTwoPi + Math.log(sum / x);
}
