import { uniformFloat64 } from "pure-rand/distribution/uniformFloat64";
import { xoroshiro128plus } from "pure-rand/generator/xoroshiro128plus";

/** Draws that come out the same for the same seed. */
export interface Draw {
  /** Between 0 and 1. */
  fraction(): number;
  /** True with that chance. */
  chance(share: number): boolean;
  /** A waiting time with that mean, exponentially distributed. */
  wait(mean: number): number;
  /** A count with that mean, Poisson distributed. */
  count(mean: number): number;
  /** A whole number from `least` to `most`. */
  whole(least: number, most: number): number;
}

/** Seeded draws. */
export function drawFrom(seed: number): Draw {
  const generator = xoroshiro128plus(seed);
  const fraction = () => uniformFloat64(generator);
  return {
    fraction,
    chance: (share) => fraction() < share,
    wait: (mean) => -mean * Math.log(1 - fraction()),
    whole: (least, most) => least + Math.floor(fraction() * (most - least + 1)),
    count(mean) {
      let count = 0;
      for (let product = fraction(); product > Math.exp(-mean); product *= fraction()) count++;
      return count;
    },
  };
}
