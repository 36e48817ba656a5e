import { describe, expect, it } from 'vitest';
import { arrowSd, groupCentreSd } from '../../../src/calibration/group.ts';
import { randomStream } from '../../../src/numerics/random.ts';
import { si } from '../../../src/quantities/quantity.ts';

const shot = (arrows: number, group: number | null) => ({
  range: si<'m'>(50),
  arrows,
  group: group === null ? null : si<'m'>(group),
  arrowSdPerRange: 0.001,
});

describe('arrowSd', () => {
  it('without a group is the usual spread at that range', () => expect(arrowSd(shot(3, null))).toBe(0.05));
  it('draws a lucky small group towards the usual spread, and a large one less far', () => {
    expect(arrowSd(shot(3, 0.001))).toBeGreaterThan(0.03);
    expect(arrowSd(shot(12, 0.01))).toBeLessThan(arrowSd(shot(3, 0.01)));
  });
  it('of three arrows with group 2.408 sd mixes 4 usual and 4 own degrees of freedom (hand calculation)', () => {
    const own = 0.02;
    expect(Math.abs(arrowSd(shot(3, 2.408 * own)) - Math.sqrt((0.05 ** 2 + own ** 2) / 2))).toBeLessThan(
      1e-12 /* m */,
    );
  });
  it('refuses a group of one arrow', () => expect(() => arrowSd(shot(1, 0.1))).toThrow(/at least 2/));

  it.each([2, 3, 5, 12])(
    'the extreme spread of %i simulated normal hits is what the table says, to 1 %',
    (arrows) => {
      const groups = 10_000;
      let sum = 0;
      for (let i = 0; i < groups; i += 1) {
        const random = randomStream(7, i);
        const hits = Array.from({ length: arrows }, () => [random.normal(), random.normal()] as const);
        sum += Math.max(
          ...hits.flatMap(([x, y], a) => hits.slice(a + 1).map(([u, v]) => Math.hypot(x - u, y - v))),
        );
      }
      // An infinitely strong own group: sd = group / factor when the group is far larger than the usual spread.
      const factor =
        1e6 /
        (arrowSd({ range: si(50), arrows, group: si(1e6), arrowSdPerRange: 0 }) *
          Math.sqrt((4 + 2 * (arrows - 1)) / (2 * (arrows - 1))));
      expect(Math.abs(sum / groups / factor - 1)).toBeLessThan(
        0.01 /* relative: 10 000 groups give 0.5 % at two arrows */,
      );
    },
  );
});

it('the centre of n arrows is surer by root n', () => expect(groupCentreSd(shot(4, null))).toBe(0.025));
