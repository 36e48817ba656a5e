import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { Item } from '../../src/documents/page/drawing.ts';
import { renderSvg } from '../../src/documents/render/svg.ts';
import { layOutTape } from '../../src/documents/tape/tape.ts';
import type { TapeContent, TapeTick } from '../../src/documents/tape/tape-content.ts';
import { leastShift } from '../../src/documents/tape/tape-labels.ts';
import { si } from '../../src/quantities/quantity.ts';
import { inkBox, inkOutside, overlaps, unprintableEdge, withRole } from '../unit/documents/ink-box.ts';
import { inventedTicks } from '../unit/documents/invented-tape.ts';

const runs = { seed: 20261125, numRuns: 60 };
const within = (min: number, max: number) => fc.double({ min, max, noNaN: true });

/** Tapes as physics makes them: marks that fall, turn back and rise. */
const turningBack = fc
  .record({
    speed: within(50, 110),
    peepHeight: within(0.05, 0.2),
    reach: within(0.05, 0.9),
    from: fc.integer({ min: 3, max: 30 }),
    count: fc.integer({ min: 1, max: 70 }),
    step: fc.constantFrom(0.9144, 1),
  })
  .map(({ from, count, step, ...setup }) => inventedTicks(from, from + count, setup, step));

/** Tapes as nothing makes them: any rising steps, many of them zero. */
const rising = fc
  .record({
    from: fc.integer({ min: 1, max: 90 }),
    near: fc.integer({ min: 0, max: 12 }),
    steps: fc.array(fc.oneof(fc.constant(0), within(0, 2e-3)), { minLength: 1, maxLength: 80 }),
  })
  .map(({ from, near, steps }): readonly TapeTick[] => {
    let along = -0.01;
    return steps.map((step, i) => {
      along += step;
      const branch = i < near ? 'near' : 'far';
      return { range: si(from + i), label: from + i, along: si(along), branch };
    });
  });

const ticks = fc.oneof(turningBack, rising);
/** Refused, with a reason. */
const areCrowded = (tape: readonly TapeTick[]): boolean => {
  const along = tape.map((tick) => tick.along);
  return (
    tape.length > 10 && Math.max(...along) - Math.min(...along) < Math.min(0.01, 0.00025 * (tape.length - 1))
  );
};
const words = fc.string({ unit: 'grapheme', maxLength: 60 });
const tape: fc.Arbitrary<TapeContent> = fc
  .record({
    title: words,
    subtitle: fc.array(words, { maxLength: 3 }),
    name: words,
    unit: fc.constantFrom('yd' as const, 'm' as const),
    increases: fc.constantFrom('down' as const, 'up' as const),
    ticks,
    zero: fc.constantFrom('far' as const, 'near' as const).map((branch) => ({ range: si<'m'>(18), branch })),
    neighbours: fc.array(fc.record({ name: words, ticks }), { maxLength: 3 }),
    warnings: fc.array(words, { maxLength: 3 }),
  })
  .filter(({ ticks }) => !areCrowded(ticks))
  .map((content) => ({ ...content, calibration: content.ticks.filter((_, i) => i % 7 === 0) }));
const print = fc.record({
  paper: fc.constantFrom('a4' as const, 'letter' as const),
  copies: fc.integer({ min: 1, max: 4 }),
  pointer: fc.constantFrom('left' as const, 'right' as const),
});

const boxesOf = (items: readonly Item[], role: string) => withRole(items, 'text', role).map(inkBox);

describe('any tape', () => {
  const each = (
    check: (content: TapeContent, pages: ReturnType<typeof layOutTape>['pages'], copies: number) => void,
  ) =>
    fc.assert(
      fc.property(tape, print, (content, how) => check(content, layOutTape(content, how).pages, how.copies)),
      runs,
    );

  it('has no label over another', () =>
    each((_, pages) => {
      for (const { items } of pages) expect(overlaps(boxesOf(items, 'label'))).toEqual([]);
    }));

  it('has no text over a label', () =>
    each((_, pages) => {
      for (const { items } of pages)
        expect(
          overlaps([...boxesOf(items, 'label'), ...boxesOf(items, 'name'), ...boxesOf(items, 'caption')]),
        ).toEqual([]);
    }));

  it('keeps all ink on printable paper', () =>
    each((_, pages) => {
      for (const page of pages) expect(inkOutside(page, unprintableEdge)).toEqual([]);
    }));

  it('draws every requested tick exactly once on each strip, at its mark', () =>
    each((content, pages, copies) => {
      const all = pages.flatMap(({ items }) => items);
      const zeros = all.flatMap((item) =>
        item.kind === 'polyline' && (item.role === 'zero' || item.role === 'zero-shot')
          ? [item.points[0]?.y ?? 0]
          : [],
      );
      const strips = [
        ...Array.from({ length: copies }, () => content.ticks),
        ...content.neighbours.map((n) => n.ticks),
      ];
      const down = content.increases === 'down' ? 1000 : -1000;
      const wanted = strips.flatMap((strip, i) => strip.map(({ along }) => (zeros[i] ?? 0) + down * along));
      const drawn = withRole(all, 'line', 'tick').map(({ from }) => from.y);
      expect(zeros).toHaveLength(strips.length);
      expect(drawn).toHaveLength(wanted.length);
      expect(Math.max(...drawn.map((y, i) => Math.abs(y - (wanted[i] ?? Number.NaN))))).toBeLessThan(
        1e-9 /* mm */,
      );
    }));

  it('labels every ten of every strip', () =>
    each((content, pages, copies) => {
      const tens = (of: readonly TapeTick[]) => of.filter(({ label }) => label % 10 === 0).length;
      const wanted =
        copies * tens(content.ticks) + content.neighbours.reduce((sum, n) => sum + tens(n.ticks), 0);
      const drawn = pages
        .flatMap(({ items }) => withRole(items, 'text', 'label'))
        .filter(({ text }) => Number(text) % 10 === 0);
      expect(drawn).toHaveLength(wanted);
    }));

  it('is well-formed XML as SVG: no raw markup, no forbidden character', () =>
    each((content, [page]) => {
      const svg = page === undefined ? '' : renderSvg(page, { title: content.title });
      const texts = svg.replaceAll(/<\/?(svg|title|rect|line|polygon|polyline|text)\b[^<>]*>/g, '');
      expect(texts).not.toMatch(/[<>]|&(?!(amp|lt|gt|quot|#39);)/);
      expect(svg).not.toMatch(/[^\n\P{Cc}]|\p{Cs}/u);
      expect(svg).not.toMatch(/NaN|Infinity|undefined/);
    }));
});

describe('leastShift', () => {
  const wanted = fc
    .array(within(-50, 50), { maxLength: 30 })
    .map((values) => values.toSorted((a, b) => a - b));

  it('keeps its distance, within rounding', () =>
    fc.assert(
      fc.property(wanted, within(0.1, 5), (values, gap) => {
        const placed = leastShift(values, gap);
        const gaps = placed.slice(1).map((at, i) => at - (placed[i] ?? at));
        expect(placed).toHaveLength(values.length);
        expect(Math.min(gap, ...gaps)).toBeGreaterThan(gap - 1e-9);
      }),
      runs,
    ));

  it('moves a crowd no further in sum of squares than spreading it about its middle does', () =>
    fc.assert(
      fc.property(wanted, within(0.1, 5), (values, gap) => {
        const cost = (placed: readonly number[]) =>
          placed.reduce((sum, at, i) => sum + (at - (values[i] ?? at)) ** 2, 0);
        const widest = Math.max(gap, ...values.slice(1).map((at, i) => at - (values[i] ?? at)));
        const middle = values.reduce((a, b) => a + b, 0) / Math.max(1, values.length);
        const simple = values.map((_, i) => middle + (i - (values.length - 1) / 2) * widest);
        expect(cost(leastShift(values, gap))).toBeLessThanOrEqual(cost(simple) + 1e-6);
      }),
      runs,
    ));
});
