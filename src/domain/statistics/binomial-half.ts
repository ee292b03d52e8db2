/**
 * The smallest count whose probability of not being exceeded, among n throws of a fair coin, reaches `probability`.
 * Method: sums of binomial coefficients from 0 upwards, in logarithms so that long series do not overflow.
 * Special case: n = 0 gives 0. Error: none but where a sum meets the probability to 14 digits.
 */
export function quantileOfBinomialHalf(probability: number, n: number): number {
  let log = -n * Math.LN2;
  let sum = Math.exp(log);
  let count = 0;
  while (sum < probability && count < n) {
    log += Math.log((n - count) / (count + 1));
    count++;
    sum += Math.exp(log);
  }
  return count;
}
