import { describe, expect, it } from 'vitest';
import { askedRanges } from '../../../../src/reports/tape/asked-ranges.ts';

describe('askedRanges', () => {
  it('are the whole yards between the ends, 0.9144 m each by definition', () =>
    expect(askedRanges({ from: '19.5 yd', to: '22.9 yd' }, 'yd')).toEqual([
      { range: 20 * 0.9144, label: 20 },
      { range: 21 * 0.9144, label: 21 },
      { range: 22 * 0.9144, label: 22 },
    ]));
  it('count an end that is whole but for the rounding of another unit: 18.288 m are 20 yd, 20.1168 m 22 yd', () =>
    expect(askedRanges({ from: '18.288 m', to: '20.1168 m' }, 'yd').map(({ label }) => label)).toEqual([
      20, 21, 22,
    ]));
  it('are whole metres on a tape in metres', () =>
    expect(askedRanges({ from: '20 yd', to: '20 m' }, 'm')).toEqual([
      { range: 19, label: 19 },
      { range: 20, label: 20 },
    ]));
  it.each([
    ['40 yd', '20 yd'],
    ['20 yd', '20.5 yd'],
    ['-5 yd', '20 yd'],
  ])('from %s to %s leaves no tape, and the message names both options', (from, to) =>
    expect(() => askedRanges({ from, to }, 'yd')).toThrow(/from .* to .* leaves no tape/),
  );
});
