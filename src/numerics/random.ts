import { NumericalError } from './numerical-error.ts';

/** Numbers drawn one after another; the n-th is the same on every machine with 64-bit floating point, in whichever thread. */
export interface RandomStream {
  /** The next number, uniform on (0, 1), neither end included. */
  readonly uniform: () => number;
  /** The next number, normal with mean 0 and standard deviation 1. */
  readonly normal: () => number;
}

type Words = readonly [number, number];

const rotated = (x: number, bits: number): number => (x << bits) | (x >>> (32 - bits));

/** Rotations of the two-word generator, in the four rounds before an odd and an even addition of the key. */
const ODD = [13, 15, 26, 6] as const;
const EVEN = [17, 29, 16, 24] as const;
/** After every four of the 20 rounds. */
const INJECTIONS = 5;
/** The constant that keeps an all-zero key from passing zeros through. */
const PARITY = 0x1bd11bda;

/**
 * The streams of independent random numbers for a seed: one for every index, such as the number of a shot, so that a result
 * does not depend on how the shots are shared out among threads.
 *
 * Each pair of 32-bit words is the counter (how many pairs were drawn) enciphered under the key (seed, index) by the
 * 20-round, two-word generator Threefry of Salmon and others; a uniform number takes 52 bits of a pair, a normal pair comes
 * from two uniform ones by the method of Box and Muller.
 *
 * Integer and correctly rounded operations make the uniform numbers bit-identical everywhere; the normal ones pass through
 * log, sin and cos, which engines round differently in the last bit.
 *
 * @param seed taken modulo 2^32; `index` too
 * @source Salmon, Moraes, Dror, Shaw, Parallel random numbers: as easy as 1, 2, 3, SC11 (2011), section 4.3, doi
 *   10.1145/2063384.2063405; Box, Muller, Ann. Math. Statist. 29 (1958) 610-611
 */
export function randomStream(seed: number, index: number): RandomStream {
  for (const given of [seed, index])
    if (!Number.isSafeInteger(given))
      throw new NumericalError('non-finite', `${given} is not a whole number`);
  const key = [seed | 0, index | 0] as const;
  let drawn = 0;
  let waiting: number | null = null;

  const uniform = (): number => {
    const [a, b] = threefry([drawn | 0, Math.floor(drawn / 2 ** 32)], key);
    drawn += 1;
    // 26 bits of each, and half a step up: neither 0 nor 1 occurs.
    return ((a >>> 6) * 2 ** 26 + (b >>> 6) + 0.5) / 2 ** 52;
  };
  const normal = (): number => {
    if (waiting !== null) {
      const second = waiting;
      waiting = null;
      return second;
    }
    const radius = Math.sqrt(-2 * Math.log(uniform()));
    const angle = 2 * Math.PI * uniform();
    waiting = radius * Math.sin(angle);
    return radius * Math.cos(angle);
  };
  return { uniform, normal };
}

/**
 * A counter of two 32-bit words enciphered under a key of two: 20 times add, rotate, exclusive-or.
 *
 * @returns two signed 32-bit integers; `>>> 0` makes them the words as usually printed
 */
export function threefry(counter: Words, key: Words): Words {
  const [k0, k1] = key;
  const k2 = PARITY ^ k0 ^ k1;
  let a = (counter[0] + k0) | 0;
  let b = (counter[1] + k1) | 0;
  // The key words take turns, two at a time.
  let [first, second, third] = [k1, k2, k0];
  for (let injection = 1; injection <= INJECTIONS; injection++) {
    const [r0, r1, r2, r3] = injection % 2 === 1 ? ODD : EVEN;
    a = (a + b) | 0;
    b = rotated(b, r0) ^ a;
    a = (a + b) | 0;
    b = rotated(b, r1) ^ a;
    a = (a + b) | 0;
    b = rotated(b, r2) ^ a;
    a = (a + b) | 0;
    b = rotated(b, r3) ^ a;
    a = (a + first) | 0;
    b = (b + second + injection) | 0;
    [first, second, third] = [second, third, first];
  }
  return [a, b];
}
