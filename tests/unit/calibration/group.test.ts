import { describe, expect, it } from 'vitest';
import { arrowSd, groupCentreSd, meanRange, spreadFactor } from '../../../src/calibration/group.ts';
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

describe('a group of more arrows than the table has', () => {
  it.each([
    [2, 1.128],
    [10, 3.078],
    [20, 3.735],
    [100, 5.015],
    [1000, 6.483],
  ])('the mean range of %i normal values is the published %d', (n, printed) =>
    // Tippett, Biometrika 17 (1925), table X, from memory; quality-control tables print the same.
    expect(Math.abs(meanRange(n) - printed)).toBeLessThan(5e-4 /* the printed digits */),
  );

  it('has a factor of its own that goes on where the table ends', () => {
    expect(spreadFactor(21) - spreadFactor(20)).toBeGreaterThan(0.03);
    expect(spreadFactor(21) - spreadFactor(20)).toBeLessThan(spreadFactor(20) - spreadFactor(19) + 0.001);
    for (let n = 3; n < 1000; n += 1) expect(spreadFactor(n)).toBeGreaterThan(spreadFactor(n - 1));
  });

  it.each([30, 60])('of %i simulated hits it is right to 1 %', (arrows) => {
    const groups = 1500;
    let sum = 0;
    for (let i = 0; i < groups; i += 1) {
      const random = randomStream(8, i);
      const hits = Array.from({ length: arrows }, () => [random.normal(), random.normal()] as const);
      sum += Math.max(
        ...hits.flatMap(([x, y], a) => hits.slice(a + 1).map(([u, v]) => Math.hypot(x - u, y - v))),
      );
    }
    expect(Math.abs(sum / groups / spreadFactor(arrows) - 1)).toBeLessThan(
      0.01 /* relative: 1500 groups give 0.3 % */,
    );
  });

  it('100 arrows are not taken for 20, which made one of them 27 % too wild', () =>
    expect(Math.abs(spreadFactor(100) / spreadFactor(20) - 1.277)).toBeLessThan(
      0.002 /* of a ratio: the print */,
    ));
});
