import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { type Item, itemsOf } from '../../src/documents/page/drawing.ts';
import { renderSvg } from '../../src/documents/render/svg.ts';
import { layOutTape, type TapePrint } from '../../src/documents/tape/tape.ts';
import {
  type StripForm,
  type TapeContent,
  type TapeSource,
  type TapeTick,
  tapesOf,
} from '../../src/documents/tape/tape-content.ts';
import { leastShift } from '../../src/documents/tape/tape-labels.ts';
import { at } from '../../src/numerics/at.ts';
import { si } from '../../src/quantities/quantity.ts';
import { drawnStrips, middleOf } from '../unit/documents/drawn-strips.ts';
import {
  inkBox,
  inkOutside,
  isInside,
  overlaps,
  unprintableEdge,
  withRole,
} from '../unit/documents/ink-box.ts';
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
const form: fc.Arbitrary<StripForm> = fc.record({
  width: within(5, 20),
  length: fc.constant(null),
  ticks: fc.constantFrom('left' as const, 'right' as const),
  farAt: fc.constantFrom('bottom' as const, 'top' as const),
  numbers: fc.constantFrom('upright' as const, 'sideways' as const),
});
const source: fc.Arbitrary<TapeSource> = fc
  .record({
    name: words,
    caption: words,
    along: fc.array(words, { maxLength: 4 }),
    ticks,
    zeroAt: fc.constantFrom(si<'m'>(0), si<'m'>(2e-4)),
    provenTo: fc.constantFrom(null, si<'m'>(40)),
  })
  .filter((one) => !areCrowded(one.ticks))
  .map((one) => ({ ...one, shot: one.ticks.filter((_, i) => i % 7 === 0) }));
const tape: fc.Arbitrary<TapeContent> = fc.record({
  title: words,
  subtitle: fc.array(words, { maxLength: 3 }),
  unit: fc.constantFrom('yd' as const, 'm' as const),
  form,
  zero: fc.record({
    range: fc.constant(si<'m'>(18)),
    branch: fc.constantFrom('far' as const, 'near' as const),
    shot: fc.boolean(),
  }),
  mains: fc.array(source, { minLength: 1, maxLength: 2 }),
  before: fc.array(source, { maxLength: 1 }),
  after: fc.array(source, { maxLength: 1 }),
  nearby: fc.constantFrom(null, 'Nearby.'),
  unproven: fc.constant('hollow'),
  warnings: fc.array(words, { maxLength: 3 }),
});
const print = fc.record({
  paper: fc.constantFrom('a4' as const, 'letter' as const),
  copies: fc.integer({ min: 0, max: 3 }),
});

const boxesOf = (items: readonly Item[], role: string) =>
  withRole(items, 'text', role)
    .filter(({ text }) => text.trim() !== '')
    .map((item) => ({ role, text: item.text, ...inkBox(item) }));

/** Ticks closer than this, mm, run together in print (common practice, no source). */
const APART = 0.35;
/** A narrower strip, mm, has no room for ticks on its other edge. */
const WITH_NEAR = 10;

/**
 * The ticks that a sheet draws, said otherwise than in the source: among the far ones all tens; fives from the first ten, and
 * ones from the first five, from which on no two neighbours of them on any tape of the sheet run together. Among the near
 * ones the like up to some range. Where that leaves nothing, all.
 */
function ruled(own: readonly TapeTick[], content: TapeContent): readonly TapeTick[] {
  const runTogether = (branch: TapeTick['branch'], step: number, isIn: (label: number) => boolean) =>
    tapesOf(content).some(({ ticks: all }) => {
      const column = all.filter((t) => t.branch === branch && t.label % step === 0 && isIn(t.label));
      return column.some(({ along }, i) => i > 0 && 1000 * Math.abs(along - at(column, i - 1).along) < APART);
    });
  // No tape here goes beyond 170.
  const farFrom = (step: number, next: number): number =>
    Array.from({ length: 1 + 200 / next }, (_, i) => next * i).find(
      (first) => !runTogether('far', step, (label) => label >= first),
    ) ?? Number.NaN;
  const nearTo = (step: number): number =>
    Array.from({ length: 200 }, (_, i) => 200 - i).find(
      (last) => !runTogether('near', step, (label) => label <= last),
    ) ?? Number.NaN;
  const first = { five: farFrom(5, 10), one: farFrom(1, 5) };
  const last = { five: nearTo(5), one: nearTo(1) };
  const rankOf = (label: number) => (label % 5 === 0 ? 'five' : 'one');
  const kept = own.filter(({ label, branch }) => {
    if (branch === 'near' && content.form.width < WITH_NEAR) return false;
    if (label % 10 === 0) return true;
    return branch === 'far' ? label >= first[rankOf(label)] : label <= last[rankOf(label)];
  });
  const far = own.filter(({ branch }) => branch === 'far');
  return [kept, far, own].find((some) => some.length > 0) ?? own;
}

describe('any tape', () => {
  const each = (
    check: (content: TapeContent, pages: ReturnType<typeof layOutTape>['pages'], how: TapePrint) => void,
  ) =>
    fc.assert(
      fc.property(tape, print, (content, how) => check(content, layOutTape(content, how).pages, how)),
      runs,
    );

  it('has no text over another', () =>
    each((_, pages) => {
      for (const items of pages.map(itemsOf))
        expect(
          overlaps(
            ['label', 'name', 'tab', 'lane', 'caption', 'heading', 'title', 'subtitle'].flatMap((role) =>
              boxesOf(items, role),
            ),
          ),
        ).toEqual([]);
    }));

  it('keeps all ink on printable paper', () =>
    each((_, pages) => {
      for (const page of pages) expect(inkOutside(page, unprintableEdge)).toEqual([]);
    }));

  it('keeps what is on a strip inside its cut lines', () =>
    each((content, pages) => {
      for (const strip of pages.flatMap((page) => drawnStrips(itemsOf(page)))) {
        expect(strip.right - strip.left).toBeCloseTo(content.form.width, 9);
        const outside = [...strip.texts, ...strip.ticks].filter(
          (item) => !isInside(inkBox(item), { ...strip, left: strip.left, right: strip.right }),
        );
        expect(outside.filter(({ kind }) => kind === 'text')).toEqual([]);
      }
    }));

  it('draws exactly the ticks of its rule, each once and at its mark, on every strip of every copy', () =>
    each((content, pages, { copies }) => {
      const strips = pages.flatMap((page) => drawnStrips(itemsOf(page)));
      const { mains, before, after } = content;
      // Zero copies fill the sheet, so how many there are is left to the sheet: but of every main tape as many.
      const each = copies > 0 ? copies : (strips.length - before.length - after.length) / mains.length;
      expect(Number.isInteger(each) && each > 0).toBe(true);
      const wanted = [
        ...before,
        ...mains.flatMap((main) => Array.from({ length: each }, () => main)),
        ...after,
      ];
      const down = content.form.farAt === 'bottom' ? 1000 : -1000;
      const left = wanted.map((one) =>
        ruled(one.ticks, content)
          .map(({ along }) => down * (along - one.zeroAt))
          .toSorted((a, b) => a - b),
      );
      for (const { zero, ticks: drawn } of strips) {
        const places = drawn.map((tick) => middleOf(tick) - zero).toSorted((a, b) => a - b);
        const found = left.findIndex(
          (own) =>
            own.length === places.length &&
            own.every((place, i) => Math.abs(place - at(places, i)) < 1e-9 /* mm, sums of doubles */),
        );
        expect(found).not.toBe(-1);
        left.splice(found, 1);
      }
      expect(left).toEqual([]);
    }));

  it('labels every ten of the far branch of every tape', () =>
    each((content, pages) => {
      const drawn = pages.flatMap((page) => drawnStrips(itemsOf(page)));
      for (const { ticks: own } of tapesOf(content)) {
        const tens = own.flatMap(({ label, branch }) =>
          branch === 'far' && label % 10 === 0 ? [String(label)] : [],
        );
        const shown = drawn.filter(({ texts }) =>
          tens.every((ten) => texts.some(({ role, text }) => role === 'label' && text === ten)),
        );
        expect(shown.length).toBeGreaterThan(0);
      }
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
        const placed = leastShift(
          values,
          values.slice(1).map(() => gap),
        );
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
        expect(
          cost(
            leastShift(
              values,
              values.slice(1).map(() => gap),
            ),
          ),
        ).toBeLessThanOrEqual(cost(simple) + 1e-6);
      }),
      runs,
    ));
});
