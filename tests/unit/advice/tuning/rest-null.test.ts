import { describe, expect, it } from 'vitest';
import { nextMove, type RestReading, restNull } from '../../../../src/advice/tuning/rest-null.ts';
import { tapeFor } from '../../../../src/advice/tuning/tape.ts';
import { GRAIN, INCH } from '../../../../src/quantities/exact.ts';
import { si } from '../../../../src/quantities/quantity.ts';

const MM = 1e-3;
const reading = (mm: number, inches: number, sd = 0.06): RestReading => ({
  position: si(mm * MM),
  reading: si(inches * INCH),
  sd: si(sd * INCH),
});
const BENDING = 0.1 * INCH;

describe('the null of the rest', () => {
  it('tears of 0.5 and 0.2 in at 0 and 0.8 mm: 1.33 mm, give or take 0.39 mm (an independent program)', () => {
    const found = restNull([reading(0, 0.5), reading(0.8, 0.2)], BENDING, 'falls');
    if (found.kind !== 'null') throw new Error(found.kind);
    expect(found.null.position / MM).toBeCloseTo(1.333, 3);
    expect(found.null.sd / MM).toBeCloseTo(0.392, 3);
    expect(found.null.slope).toBeCloseTo((-0.3 * INCH) / (0.8 * MM), 9);
  });
  it('bending that all tears share moves the null and not the slope', () => {
    const [shared, none] = [BENDING, 0].map((sd) =>
      restNull([reading(0, 0.5), reading(0.8, 0.2)], sd, 'falls'),
    );
    if (shared?.kind !== 'null' || none?.kind !== 'null') throw new Error('no null');
    expect(none.null.slope).toBeCloseTo(shared.null.slope, 9);
    expect(none.null.sd).toBeLessThan(shared.null.sd);
  });
  it('one place says nothing yet, and neither do places that hardly differ', () => {
    expect(restNull([reading(0, 0.5)], BENDING, 'falls').kind).toBe('not yet');
    expect(restNull([reading(0, 0.5), reading(0.8, 0.45)], BENDING, 'falls').kind).toBe('not yet');
  });
  it('a tear that grows, surely, went the wrong way', () =>
    expect(restNull([reading(0, 0.2), reading(0.8, 0.5)], BENDING, 'falls').kind).toBe('wrong way'));
});

describe('the next move of the rest', () => {
  const first = restNull([reading(0, 0.5)], BENDING, 'falls');
  it('first 1/32 in towards the hole of the nock; half of that for a small tear', () => {
    expect(nextMove(first, 0, 0.5 * INCH, 0.25 * INCH, 'falls') / INCH).toBeCloseTo(1 / 32, 12);
    expect(nextMove(first, 0, -0.2 * INCH, 0.25 * INCH, 'falls') / INCH).toBeCloseTo(-1 / 64, 12);
  });
  it('first away from bare shafts, so that they come to the fletched group', () =>
    expect(nextMove(first, 0, 5 * INCH, 2 * INCH, 'rises') / INCH).toBeCloseTo(-1 / 32, 12));
  it('later to the null, at most 1/16 in at a time', () => {
    const found = restNull([reading(0, 0.5), reading(0.8, 0.2)], BENDING, 'falls');
    expect(nextMove(found, 0.8 * MM, 0.2 * INCH, 0.25 * INCH, 'falls') / MM).toBeCloseTo(0.533, 3);
    expect(nextMove(found, -5 * MM, 0.2 * INCH, 0.25 * INCH, 'falls') / INCH).toBeCloseTo(1 / 16, 12);
  });
});

it('tape: 446 and 427 gr balancing at 17.9 and 18.61 in want 19 gr at 1.94 in, give or take 0.68 in', () => {
  const found = tapeFor(
    { mass: si(446 * GRAIN), balance: si(17.9 * INCH) },
    { mass: si(427 * GRAIN), balance: si(18.61 * INCH) },
  );
  expect(found.mass / GRAIN).toBeCloseTo(19, 9);
  expect(Math.abs(found.fromNock / INCH - 1.94)).toBeLessThan(0.0051 /* in, the printed digit */);
  // the scale's tenth of a grain adds a seventh
  expect(Math.abs(found.fromNockSd / INCH - 0.68)).toBeLessThan(
    0.02 /* in, the printed digit and the scale */,
  );
});
