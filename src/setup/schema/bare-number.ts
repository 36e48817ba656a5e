import { type DisplayUnit, toSi } from '../../quantities/format.ts';
import { trimmed } from '../../quantities/trimmed.ts';
import type { LeafOutcome } from './leaf.ts';
import { isWithin, type Limit, type LimitUnit, otherUnit } from './limit.ts';
import { allowedBy, exampleOf, withUnit } from './refusal.ts';

/**
 * The units that a number without one may have been meant in, by the unit of the limits. Draw weight is in pounds in every
 * country, and angles are in degrees; common practice, no source.
 */
const MEANT: Partial<Record<LimitUnit, readonly DisplayUnit[]>> = {
  in: ['in', 'mm', 'cm'],
  mph: ['mph', 'm/s', 'km/h'],
  deg: ['deg'],
  lbf: ['lbf'],
};

const candidates = ({ unit }: Limit): readonly DisplayUnit[] => MEANT[unit] ?? [unit, otherUnit(unit)];

/** A number with a unit that brings it inside its limits. */
interface WithUnit {
  readonly value: number;
  readonly text: string;
}

/**
 * A number without a unit: read when only one unit brings it inside the limits, and otherwise refused with those that would.
 * Zero is the same in every unit but those of temperature.
 *
 * @param numbers what the text may mean; more than one where it has a comma
 * @param other the limits of a key that this one is taken for: a number that fits only the other one is not read in another unit
 */
export function bareQuantity<Q extends number>(
  limit: Limit,
  text: string,
  numbers: readonly number[],
  other?: Limit,
): LeafOutcome<Q> {
  const fits = (candidate: Limit) =>
    numbers.some((number) => isWithin(candidate, toSi(number, candidate.unit)));
  const misplaced = other !== undefined && fits(other) && !fits(limit);
  const inside = misplaced ? [] : withUnitsInside(limit, numbers);
  const [first] = inside;
  if (first !== undefined && inside.every(({ value }) => value === first.value))
    // Whoever asks knows the kind from the key.
    return { value: first.value as Q, readAs: first.text };
  const write =
    first === undefined
      ? `a value within the limits, such as "${exampleOf(limit, false)}"`
      : inside.map((each) => `"${each.text}"`).join(' or ');
  return {
    refusal: {
      reason: `"${text}" has no unit${first === undefined ? '' : ', and more than one would fit'}`,
      allowed: allowedBy(limit, ''),
      write,
    },
  };
}

const withUnitsInside = (limit: Limit, numbers: readonly number[]): readonly WithUnit[] =>
  numbers.flatMap((number) =>
    candidates(limit)
      .map((unit) => ({ value: toSi(number, unit), text: withUnit(Number(trimmed(number)), unit) }))
      .filter(({ value }) => isWithin(limit, value)),
  );
