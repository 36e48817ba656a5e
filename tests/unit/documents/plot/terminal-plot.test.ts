import { describe, expect, it } from 'vitest';
import type { Plot } from '../../../../src/documents/plot/plot-data.ts';
import { plotText } from '../../../../src/documents/plot/terminal-plot.ts';
import { DomainError } from '../../../../src/quantities/domain-error.ts';

const size = { width: 60, height: 18 };
const plot: Plot = {
  title: 'Residuals',
  x: { label: 'range', unit: 'yd' },
  y: { label: 'residual', unit: 'mm' },
  series: [
    {
      name: 'shot',
      kind: 'points',
      points: [
        { x: 20, y: 0.5, error: 0.4 },
        { x: 60, y: -0.5 },
      ],
    },
    {
      name: 'model',
      kind: 'line',
      points: [
        { x: 0, y: -1 },
        { x: 100, y: 1 },
      ],
    },
  ],
  markers: [{ axis: 'x', at: 40, label: 'zero range' }],
};
const rows = (text: string) => text.split('\n');

describe('plotText', () => {
  const text = plotText(plot, size);

  it('is as many lines as asked for, none wider than asked for', () => {
    expect(rows(text)).toHaveLength(size.height + 1);
    expect(text.endsWith('\n')).toBe(true);
    expect(Math.max(...rows(text).map((line) => Array.from(line).length))).toBeLessThanOrEqual(size.width);
  });

  it('names title, axes with units, series and marker', () => {
    for (const words of [
      'Residuals',
      'residual (mm)',
      'range (yd)',
      '● shot',
      '⠒⠒⠒⠒⠒ model',
      '┊ zero range: 40 yd',
    ])
      expect(text).toContain(words);
  });

  it('draws each point once as its sign, apart from the legend', () =>
    expect(text.split('●')).toHaveLength(2 + 1 + 1));

  it('stands a point above the zero line when it is positive and below when negative', () => {
    const lines = rows(text);
    const zero = lines.findIndex((line) => line.includes('───') && line.includes('┤'));
    const signs = lines.flatMap((line, i) => (line.includes('●') ? [i] : []));
    expect(signs[0]).toBeLessThan(zero);
    expect(signs[1]).toBeGreaterThan(zero);
  });

  it('draws the error bar above and below its point and none for the point without', () => {
    const lines = rows(text).map((line) => Array.from(line));
    const signRow = lines.findIndex((line) => line.includes('●'));
    const column = lines[signRow]?.indexOf('●') ?? -1;
    expect(lines[signRow - 1]?.[column]).toMatch(/[\u2801-\u28ff]/u);
    expect(lines[signRow + 1]?.[column]).toMatch(/[\u2801-\u28ff]/u);
  });

  it('draws a rising line from the bottom left to the top right', () => {
    const line = plot.series.filter(({ kind }) => kind === 'line');
    const inside = rows(plotText({ ...plot, series: line, markers: [] }, size))
      .filter((line) => /[│┤]/u.test(line))
      .map((line) => line.replace(/^.*?[│┤]/u, ''));
    const dots = inside.map((line) => Array.from(line).findIndex((c) => /[\u2801-\u28ff]/u.test(c)));
    expect(dots[0]).toBeGreaterThan(40);
    expect(dots.at(-1)).toBe(0);
  });

  it('tells two lines apart by their dots', () => {
    const line = (name: string, y: number) => ({
      name,
      kind: 'line' as const,
      points: [
        { x: 0, y },
        { x: 100, y },
      ],
    });
    const two = rows(plotText({ ...plot, markers: [], series: [line('a', 1), line('b', 3)] }, size));
    const drawn = two.filter((row) => /[\u2801-\u28ff]/u.test(row.slice(8)) && /[│┤]/u.test(row));
    expect(drawn).toHaveLength(2);
    expect(drawn[0]?.slice(8)).not.toBe(drawn[1]?.slice(8));
  });

  it('has no zero line where zero is outside', () => {
    const high = {
      ...plot,
      markers: [],
      series: [
        {
          name: 'a',
          kind: 'points' as const,
          points: [
            { x: 1, y: 50 },
            { x: 2, y: 60 },
          ],
        },
      ],
    };
    expect(rows(plotText(high, size)).filter((line) => /[│┤].*───/u.test(line))).toEqual([]);
  });

  it('shows a single level point', () =>
    expect(
      plotText(
        { ...plot, markers: [], series: [{ name: 'a', kind: 'points', points: [{ x: 5, y: 0 }] }] },
        size,
      ),
    ).toContain('●'));

  it.each([
    [{ width: 29, height: 18 }, plot],
    [{ width: 60, height: 9 }, plot],
    [size, { ...plot, series: [] }],
    [size, { ...plot, series: [{ name: 'a', kind: 'line' as const, points: [{ x: 0, y: Number.NaN }] }] }],
  ])('refuses %o with a plot it cannot draw there', (room, given) =>
    expect(() => plotText(given, room)).toThrow(DomainError),
  );
});
