import { describe, expect, it } from 'vitest';
import { NumericalError } from '../../../src/numerics/numerical-error.ts';
import { type Metres, si } from '../../../src/quantities/quantity.ts';
import { marksFor, settingsFor } from '../../../src/sight/marks.ts';
import { asFarAsItGoes } from '../../../src/sight/reach.ts';
import { conditionsOf, pointArrow } from '../flight/point-arrow.ts';
import { recorded } from '../numerics/recorded.ts';
import { dragless } from './invented-rig.ts';

/**
 * Without drag a bow of 25 m/s throws v^2/g = 63.73 m at 45 degrees, from a little ahead of the eye and back to its height:
 * 50 m it reaches, 70 m it does not.
 */
const feeble = { ...dragless, launchSpeed: si<'m/s'>(25), zeroRange: si<'m'>(20) };
const metres = (...ranges: readonly number[]): readonly Metres[] => ranges.map((range) => si<'m'>(range));
const count = (reached: readonly Metres[]): number => marksFor(feeble, reached).marks.length;

describe('asFarAsItGoes', () => {
  it('solves for all ranges where the arrow gets to all', () =>
    expect(asFarAsItGoes(feeble, metres(10, 20, 50), count)).toEqual({
      solved: 3,
      beyond: null,
      isHit: true,
    }));

  it.each([
    [metres(10, 70), 1, 70],
    [metres(10, 20, 70), 2, 70],
    [metres(10, 20, 30, 40, 50, 70, 80), 5, 70],
    [metres(10, 20, 30, 70, 80, 90, 100, 110), 3, 70],
  ])(
    'of %j solves for the first %i, and names %i m as the first that no pin hits',
    (ranges, reached, beyond) =>
      expect(asFarAsItGoes(feeble, ranges, count)).toEqual({ solved: reached, beyond, isHit: false }),
  );

  it.each([1, 2, 3, 4])(
    'solves for the most that can be solved together, %i of five that are reached',
    (most) => {
      const ranges = metres(10, 20, 30, 40, 50, 70);
      const together = (reached: readonly Metres[]): number => {
        if (reached.length > most) throw new NumericalError('not-converged', 'too many');
        return reached.length;
      };
      expect(asFarAsItGoes(feeble, ranges, together)).toEqual({
        solved: most,
        beyond: ranges[most],
        isHit: true,
      });
    },
  );

  it('stops short where some pin hits all ranges, but not in every shot that is asked about', () => {
    const ranges = metres(10, 20, 30, 40, 50, 60);
    // As with 90 % of the speed, as against a wind: v^2/g is 51.62 m then.
    const against = { ...feeble, launchSpeed: si<'m/s'>(22.5) };
    const both = (reached: readonly Metres[]): number =>
      count(reached) + marksFor(against, reached).marks.length;
    expect(asFarAsItGoes(feeble, ranges, both)).toEqual({ solved: 10, beyond: 60, isHit: true });
  });

  it('stops short too where an arrow of much drag would fall upright before it gets so far', () => {
    const braked = {
      ...dragless,
      conditions: conditionsOf(pointArrow(0.013, 0.00762, 9.5)),
      launchSpeed: si<'m/s'>(91.44),
    };
    // As a guess of the range that is a quarter too long.
    const withGuesses = (reached: readonly Metres[]): number =>
      marksFor(
        braked,
        reached.map((range) => 1.25 * range),
      ).marks.length;
    expect(asFarAsItGoes(braked, metres(20, 40, 60, 90), withGuesses)).toEqual({
      solved: 3,
      beyond: 90,
      isHit: true,
    });
  });

  it('solves for few ranges at a time until it knows how far it gets', () => {
    const ranges = metres(...Array.from({ length: 500 }, (_, i) => 10 + i / 5));
    const { asked, call } = recorded(count);
    // At 45 degrees the arrow leaves the bow 0.98 m along that line and 0.117 m below it: 0.78 m ahead of the eye and
    // 0.61 m above it, from where it carries 63.73 m and a little less than 0.61 m more: 65.1 m.
    expect(asFarAsItGoes(feeble, ranges, call)).toMatchObject({ beyond: 65.2 });
    expect(asked.filter((reached) => reached.length > 2)).toHaveLength(2);
  });

  it('hands on the failure where none can be solved, and what is no matter of reach', () => {
    const failing = (error: Error) => () =>
      asFarAsItGoes(feeble, metres(10, 20, 70), (reached): never => {
        throw reached.length === 3 ? new NumericalError('not-converged', 'all of them') : error;
      });
    expect(failing(new NumericalError('not-converged', 'fewer'))).toThrow('all of them');
    expect(failing(new TypeError('a slip'))).toThrow('a slip');
  });

  it('is an error where it gets to none', () =>
    expect(() => asFarAsItGoes(feeble, metres(70, 80), count)).toThrow(
      expect.objectContaining({ code: 'not-converged' }),
    ));

  it('hands on what is no matter of reach, whether or not the ranges are reached', () => {
    const failure = new TypeError('something else');
    const { asked, call } = recorded((_: readonly Metres[]): never => {
      throw failure;
    });
    expect(() => asFarAsItGoes(feeble, metres(10, 70), call)).toThrow(failure);
    expect(asked).toHaveLength(1);
  });

  it('hands on a failure to solve where all the ranges are reached', () => {
    const nowhere = { ...feeble, zeroRange: si<'m'>(90) };
    expect(() => asFarAsItGoes(feeble, metres(10, 20), () => marksFor(nowhere, [10]))).toThrow(
      NumericalError,
    );
  });
});

describe('settingsFor', () => {
  const leaning = {
    ...dragless,
    geometry: { ...dragless.geometry, lean: si<'rad'>(0.3), barAngle: si<'rad'>(0.2) },
    housingBelowPin: si<'m'>(0.02),
  };
  const ranges = [60, 3, 18.288];

  it('has of each mark the range, travel, side of the path and room', () => {
    const { marks } = marksFor(leaning, ranges);
    expect(settingsFor(leaning, ranges)).toEqual(
      marks.map(({ range, travel, rising, clearance }) => ({ range, travel, rising, clearance })),
    );
    expect(settingsFor(leaning, ranges).map(({ rising }) => rising)).toEqual([false, true, false]);
  });

  it('counts room square to the arrow: a pin s down a leaning bar stands s cos(lean) cos(bar) below the eye', () => {
    const { zero, marks } = marksFor(leaning, ranges);
    for (const [i, { travel, clearance }] of settingsFor(leaning, ranges).entries()) {
      const down = zero.down + travel;
      // By hand: peep height 0.11684 m, vanes of radius 0.0062484/2 + 0.0127 m, a housing to 0.02 m below the pin.
      const room = 0.11684 - down * Math.cos(0.3) * Math.cos(0.2) - 0.0158242 - 0.02;
      expect(clearance).toBeCloseTo(room, 14);
      expect(marks[i]?.travel).toBe(travel);
    }
  });
});
