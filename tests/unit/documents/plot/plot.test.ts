import { describe, expect, it } from 'vitest';
import { plotItems } from '../../../../src/documents/plot/plot.ts';
import type { Plot } from '../../../../src/documents/plot/plot-data.ts';
import { lineStyle, pointSign } from '../../../../src/documents/plot/series-style.ts';
import { DomainError } from '../../../../src/quantities/domain-error.ts';
import { inkBox, overlaps, withRole } from '../ink-box.ts';

const rect = { x: 10, y: 20, width: 92, height: 62 };
const plot: Plot = {
  title: 'Path',
  x: { label: 'range', unit: 'yd' },
  y: { label: 'height', unit: 'in' },
  series: [
    {
      name: 'model',
      kind: 'line',
      points: [
        { x: 0, y: -40 },
        { x: 50, y: 10 },
        { x: 100, y: -100 },
      ],
    },
    {
      name: 'shot',
      kind: 'points',
      points: [
        { x: 50, y: 0, error: 20 },
        { x: 100, y: -100 },
      ],
    },
  ],
  markers: [{ axis: 'y', at: -60, label: 'limit' }],
};

describe('plotItems', () => {
  const items = plotItems(plot, rect);
  const texts = items.flatMap((item) => (item.kind === 'text' ? [item.text] : []));
  const [axisX, axisY] = withRole(items, 'line', 'axis-line');

  it('says title, axes with units, series, marker and round numbers', () =>
    expect(texts).toEqual(
      expect.arrayContaining([
        'Path',
        'height (in)',
        'range (yd)',
        'model',
        'shot',
        'limit: −60 in',
        '0',
        '100',
        '−100',
      ]),
    ));

  it('draws a band as two open lines, an error above and below, in one style and with one name', () => {
    const points = [
      { x: 0, y: 0, error: 10 },
      { x: 100, y: 0, error: 30 },
    ];
    const items = plotItems({ ...plot, series: [{ name: 'band', kind: 'band', points }] }, rect);
    const [upper, lower, ...others] = withRole(items, 'polyline', 'curve');
    expect(others).toEqual([]);
    expect(upper?.points).toHaveLength(2);
    expect(upper?.closed).toBeUndefined();
    expect(lower?.dash).toEqual(upper?.dash);
    const opening = [0, 1].map((i) => (lower?.points[i]?.y ?? 0) - (upper?.points[i]?.y ?? 0));
    expect((opening[1] ?? 0) / (opening[0] ?? 1)).toBeCloseTo(3, 9);
    expect(items.filter((item) => item.kind === 'text' && item.text === 'band')).toHaveLength(1);
  });

  it('ends a tight axis at its outermost values, not at round numbers', () => {
    const series = [
      {
        name: 'shot',
        kind: 'points' as const,
        points: [
          { x: 18, y: 0 },
          { x: 57, y: 1 },
        ],
      },
    ];
    const items = plotItems({ ...plot, x: { ...plot.x, tight: true }, series }, rect);
    const [axis] = withRole(items, 'line', 'axis-line').slice(1);
    const signs = withRole(items, 'polyline', 'point').map(({ points }) => points.map(({ x }) => x));
    const middle = (xs: readonly number[] = []) => (Math.min(...xs) + Math.max(...xs)) / 2;
    expect(middle(signs[1])).toBeCloseTo(axis?.from.x ?? Number.NaN, 6);
    expect(middle(signs[2])).toBeCloseTo(axis?.to.x ?? Number.NaN, 6);
  });

  it('reaches further along an axis when told to', () => {
    const further = plotItems({ ...plot, x: { ...plot.x, reaches: [-40, 160] } }, rect);
    const texts = further.flatMap((item) => (item.kind === 'text' ? [item.text] : []));
    expect(texts).toEqual(expect.arrayContaining(['−50', '200']));
  });

  it('puts the points of a curve where the axes say, to the rounding of a double', () => {
    const [curve] = withRole(items, 'polyline', 'curve');
    const [left, right] = [axisY?.from.x ?? 0, axisY?.to.x ?? 0];
    const [top, bottom] = [axisX?.from.y ?? 0, axisX?.to.y ?? 0];
    // x axis 0 to 100; y axis -100 to 50 by 50.
    const wanted = [
      { x: left, y: top + ((50 + 40) / 150) * (bottom - top) },
      { x: (left + right) / 2, y: top + ((50 - 10) / 150) * (bottom - top) },
      { x: right, y: bottom },
    ];
    for (const [i, { x, y }] of wanted.entries()) {
      expect(Math.abs((curve?.points[i]?.x ?? Number.NaN) - x)).toBeLessThan(1e-9 /* mm */);
      expect(Math.abs((curve?.points[i]?.y ?? Number.NaN) - y)).toBeLessThan(1e-9 /* mm */);
    }
  });

  it('draws a zero line, a marker line and an error bar with two caps', () => {
    expect(withRole(items, 'line', 'zero')).toHaveLength(1);
    expect(withRole(items, 'line', 'marker')).toHaveLength(1);
    expect(withRole(items, 'line', 'error')).toHaveLength(3);
    expect(withRole(items, 'polyline', 'point')).toHaveLength(2 + 1);
  });

  it('keeps its texts apart', () =>
    expect(overlaps(items.filter(({ kind }) => kind === 'text').map(inkBox))).toEqual([]));

  it('tells four curves apart by their dash alone', () =>
    expect(new Set([0, 1, 2, 3].map((i) => String(lineStyle(i).dash))).size).toBe(4));

  it('tells eight curves apart by their dash alone, and eight signs by shape and filling', () => {
    const eight = Array.from({ length: 8 }, (_, i) => i);
    expect(new Set(eight.map((i) => String(lineStyle(i).dash))).size).toBe(8);
    const signs = eight.map((i) => {
      const sign = pointSign(i, { x: 0, y: 0 });
      return sign.kind === 'polyline' ? JSON.stringify([sign.points, sign.fill]) : '';
    });
    expect(new Set(signs).size).toBe(8);
  });

  it('names eight lines at their ends, apart and inside, even where all lie on one another', () => {
    const series = Array.from({ length: 8 }, (_, i) => ({
      name: `build ${i}`,
      kind: 'line' as const,
      points: [
        { x: 0, y: 0 },
        { x: 100, y: i < 4 ? -100 : 0 },
      ],
    }));
    const items = plotItems({ ...plot, series, namedAtEnds: true, markers: [] }, rect);
    const names = withRole(items, 'text', 'line-name');
    expect(names.map(({ text }) => text).toSorted()).toEqual(series.map(({ name }) => name));
    expect(overlaps(items.filter(({ kind }) => kind === 'text').map(inkBox))).toEqual([]);
    for (const box of items.map(inkBox)) {
      expect(box.right).toBeLessThanOrEqual(rect.x + rect.width + 1e-9 /* mm, rounding */);
      expect(box.bottom).toBeLessThanOrEqual(rect.y + rect.height + 1e-9 /* mm, rounding */);
    }
    const middles = withRole(items, 'polyline', 'sign').map(
      ({ points }) => points.reduce((sum, { x }) => sum + x, 0) / points.length,
    );
    const onLines = middles.slice(0, 8 * 3);
    const leftmost = Math.min(...names.map(({ x }) => x));
    for (const x of onLines) expect(x).toBeLessThan(leftmost);
    expect(new Set(onLines.map((x) => x.toFixed(3))).size).toBe(8 * 3);
  });

  it.each([
    [{ ...rect, width: 39 }, plot],
    [{ ...rect, height: 29 }, plot],
    [
      { ...rect, height: 30 },
      { ...plot, series: Array(30).fill(plot.series[0]) },
    ],
    [rect, { ...plot, series: [] }],
    [rect, { ...plot, markers: [{ axis: 'x' as const, at: Number.NaN, label: '' }] }],
  ])('refuses a place or a plot that cannot be drawn (%#)', (place, given) =>
    expect(() => plotItems(given, place)).toThrow(DomainError),
  );
});
