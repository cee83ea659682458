/** A repeatable source of uniform numbers. */
export interface SeededRandom {
  /** Uniform in [0, 1), in steps of 2⁻³². */
  readonly uniform: () => number;
  /** Uniform whole number from 0 to `bound` − 1; `bound` a whole number up to 2³². */
  readonly below: (bound: number) => number;
  /** The next 32 bits, as a whole number from 0 to 2³² − 1. */
  readonly bits: () => number;
}

/**
 * xoshiro128** 1.1 of Blackman and Vigna (https://prng.di.unimi.it/xoshiro128starstar.c) over a state of four 32-bit
 * words. Integers only, so that every engine draws the same numbers.
 *
 * @throws RangeError for a state that is all 0, from which nothing else ever comes
 */
export function randomFromState(state: readonly [number, number, number, number]): SeededRandom {
  if (state.every((word) => word >>> 0 === 0))
    throw new RangeError("randomFromState requires a state other than 0 0 0 0");
  let [first, second, third, fourth] = state;
  const bits = (): number => {
    const product = Math.imul(second, 5);
    const result = Math.imul((product << 7) | (product >>> 25), 9) >>> 0;
    const shifted = second << 9;
    third ^= first;
    fourth ^= second;
    second ^= third;
    first ^= fourth;
    third ^= shifted;
    fourth = (fourth << 11) | (fourth >>> 21);
    return result;
  };
  return {
    bits,
    uniform: () => bits() / 4294967296,
    // Multiplying by the bound and dropping the fraction is exact below 2^53; its bias, under bound/2^32, is no matter here.
    below: (bound) => {
      if (!(Number.isInteger(bound) && bound > 0 && bound <= 4294967296)) {
        throw new RangeError(`below requires a whole number from 1 to 2^32; got ${bound}`);
      }
      return Math.floor((bits() / 4294967296) * bound);
    },
  };
}

/**
 * The same source from one whole number, spread over the state by a Weyl sequence through the finaliser of MurmurHash3,
 * so that neighbouring seeds have nothing in common.
 *
 * @throws RangeError for a seed that is not a whole number
 */
export function seededRandom(seed: number): SeededRandom {
  if (!Number.isSafeInteger(seed)) throw new RangeError(`seededRandom requires a whole number; got ${seed}`);
  let weyl = (seed | 0) ^ Math.imul(Math.floor(seed / 4294967296) | 0, 0x85ebca6b);
  const next = (): number => {
    weyl = (weyl + 0x9e3779b9) | 0;
    let word = weyl;
    word = Math.imul(word ^ (word >>> 16), 0x85ebca6b);
    word = Math.imul(word ^ (word >>> 13), 0xc2b2ae35);
    return word ^ (word >>> 16);
  };
  return randomFromState([next(), next(), next(), next()]);
}
