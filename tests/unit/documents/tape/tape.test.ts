import { describe, expect, it } from 'vitest';
import { type Drawing, type Item, itemsOf, paperSizes } from '../../../../src/documents/page/drawing.ts';
import { capHeight } from '../../../../src/documents/page/text-measure.ts';
import { layOutTape, type TapePrint } from '../../../../src/documents/tape/tape.ts';
import type { TapeContent, TapeTick } from '../../../../src/documents/tape/tape-content.ts';
import { si } from '../../../../src/quantities/quantity.ts';
import { type DrawnStrip, drawnStrips, middleOf } from '../drawn-strips.ts';
import { inkBox, inkOutside, isInside, overlap, unprintableEdge, withRole } from '../ink-box.ts';
import { inventedForm, inventedSetup, inventedTape } from '../invented-tape.ts';

const print: TapePrint = { paper: 'a4', copies: 3 };
const items = (drawing: Drawing) => drawing.pages.flatMap(itemsOf);
const strips = (drawing: Drawing) => drawing.pages.flatMap((page) => drawnStrips(itemsOf(page)));
const textOn = (strip: DrawnStrip | undefined, ...roles: readonly string[]) =>
  (strip?.texts ?? []).filter(({ role }) => roles.includes(role ?? '')).map(({ text }) => text);
const textsOf = (drawing: Drawing) =>
  items(drawing).flatMap((item) => (item.kind === 'text' ? [item.text] : []));
const inkOf = (tape: TapeContent) => items(layOutTape(tape, print));

/** The tick of a strip that stands at the mark of a label, on the edge of its branch. */
function tickAt(
  strip: DrawnStrip | undefined,
  { mains, form }: TapeContent,
  label: number,
): Item | undefined {
  const mark = mains[0]?.ticks.find((tick) => tick.label === label);
  if (strip === undefined || mark === undefined) return undefined;
  const y = strip.zero + (form.farAt === 'bottom' ? 1000 : -1000) * mark.along;
  const edge = (mark.branch === 'far') === (form.ticks === 'left') ? strip.left : strip.right;
  return strip.ticks.find((tick) => {
    const { left, right } = inkBox(tick);
    const fromEdge = Math.min(Math.abs(left - edge), Math.abs(right - edge));
    return Math.abs(middleOf(tick) - y) < 1e-9 /* mm */ && fromEdge < 0.05 /* mm, half of an outline */;
  });
}

describe('layOutTape', () => {
  const content = inventedTape();
  const drawing = layOutTape(content, print);
  const [, main] = strips(drawing);

  it('draws the main strip in copies between the slower strip and the faster one', () => {
    const names = withRole(items(drawing), 'text', 'heading').map(({ text }) => text);
    expect(names).toEqual(['−4 ft/s', '281 ft/s', '281 ft/s', '281 ft/s', '+4 ft/s']);
    const captions = withRole(items(drawing), 'text', 'caption').map(({ text }) => text);
    expect(captions.join(' ')).toMatch(/^far shots .*Tape far shots /);
  });

  it('fills the sheet with copies when none are asked for, and begins no second one', () => {
    const filled = layOutTape(content, { paper: 'a4', copies: 0 });
    const copies = strips(filled).length - 2;
    expect(filled.pages).toHaveLength(1);
    expect(copies).toBeGreaterThan(8);
    expect(layOutTape(content, { paper: 'a4', copies: copies + 1 }).pages).toHaveLength(2);
  });

  it('stands the zero ranges of a row on one line, whichever way strips run', () => {
    for (const farAt of ['bottom', 'top'] as const) {
      const drawn = strips(layOutTape({ ...content, form: { ...inventedForm, farAt } }, print));
      expect(drawn).toHaveLength(5);
      for (const { zero } of drawn) expect(zero).toBeCloseTo(drawn[0]?.zero ?? Number.NaN, 9);
    }
  });

  it('thins ticks by one rule: every five, and single yards from the five on where 0.35 mm lie between them', () => {
    const drawn = content.mains.flatMap(({ ticks }) =>
      ticks.flatMap(({ label }) => (tickAt(main, content, label) === undefined ? [] : [label])),
    );
    const far = (content.after[0]?.ticks ?? []).filter(({ branch }) => branch === 'far');
    // The faster strip is the tightest one.
    const tight = far.filter(({ along }, i) => {
      const before = far[i - 1];
      return before !== undefined && 1000 * (along - before.along) < 0.35 /* mm */;
    });
    const first = 5 * Math.ceil((tight.at(-1)?.label ?? Number.NaN) / 5);
    expect(first).toBeGreaterThan(20);
    expect(drawn.filter((label) => label % 5 !== 0 && label > 14)).toEqual(
      Array.from({ length: 101 - first }, (_, i) => first + i).filter((label) => label % 5 !== 0),
    );
  });

  it('draws the same ticks and the same numbers on every strip', () => {
    for (const strip of strips(drawing)) {
      expect(textOn(strip, 'label').toSorted()).toEqual(textOn(main, 'label').toSorted());
      expect(strip.ticks).toHaveLength(main?.ticks.length ?? Number.NaN);
    }
  });

  it('makes every fifth tick longer and every tenth longest', () => {
    const lengthOf = (label: number) => {
      const tick = tickAt(main, content, label);
      return tick === undefined ? Number.NaN : inkBox(tick).right - inkBox(tick).left;
    };
    expect(lengthOf(51)).toBeLessThan(lengthOf(55));
    expect(lengthOf(55)).toBeLessThan(lengthOf(50));
  });

  it.each(['left', 'right'] as const)(
    'starts far ticks on the %s cut line, near ticks on the other',
    (side) => {
      const tape = inventedTape(5, 100, inventedSetup, { form: { ...inventedForm, ticks: side } });
      const strip = strips(layOutTape(tape, print))[1];
      const other = side === 'left' ? 'right' : 'left';
      for (const [label, edge] of [
        [30, side],
        [5, other],
      ] as const) {
        const tick = tickAt(strip, tape, label);
        expect(tick?.kind === 'line' ? tick.from.x : Number.NaN).toBe(strip?.[edge]);
      }
    },
  );

  it('puts longer ranges at the end the sight needs', () => {
    const height = (farAt: 'bottom' | 'top', label: number) => {
      const tape = { ...content, form: { ...inventedForm, farAt } };
      const tick = tickAt(strips(layOutTape(tape, print))[1], tape, label);
      return tick === undefined ? Number.NaN : middleOf(tick);
    };
    expect(height('bottom', 100)).toBeGreaterThan(height('bottom', 30));
    expect(height('top', 100)).toBeLessThan(height('top', 30));
  });

  it('leaves paper between ticks however they crowd', () => {
    const boxes = (main?.ticks ?? []).map(inkBox).toSorted((a, b) => a.top - b.top);
    const far = boxes.filter(({ left }) => Math.abs(left - (main?.left ?? 0)) < 0.05 /* mm */);
    expect(far.length).toBeGreaterThan(70);
    expect(far.slice(1).filter(({ top }, i) => !(top > (far[i]?.bottom ?? 0)))).toEqual([]);
  });

  it('draws ticks hollow beyond what is proven, and only those', () => {
    const roles = [80, 81, 100].map((label) => tickAt(main, content, label)?.role);
    expect(roles).toEqual(['tick', 'hollow-tick', 'hollow-tick']);
    expect(main?.ticks.filter(({ role }) => role === 'hollow-tick')).toHaveLength(20);
  });

  it('cuts a strip to the length of its place, and leaves the rest of it at the far end', () => {
    for (const farAt of ['bottom', 'top'] as const) {
      const [, strip] = strips(
        layOutTape({ ...content, form: { ...inventedForm, farAt, length: 70 } }, print),
      );
      const { top = Number.NaN, fold = Number.NaN, zero = Number.NaN } = strip ?? {};
      expect(fold - top).toBeCloseTo(70, 9);
      expect(farAt === 'bottom' ? zero - top : fold - zero).toBeLessThan(5 /* mm */);
    }
  });

  it('labels every ten on both branches', () => {
    const labels = textOn(main, 'label');
    for (const ten of [10, 20, 30, 40, 50, 60, 70, 80, 90, 100]) expect(labels).toContain(String(ten));
  });

  it.each([9, 12, 20])('prints bold digits 2.5 mm high on a strip %d mm wide', (width) => {
    const tape = inventedTape(20, 100, inventedSetup, { form: { ...inventedForm, width } });
    const ten = withRole(inkOf(tape), 'text', 'label').find(({ text }) => text === '50');
    expect(ten?.weight).toBe('bold');
    expect(capHeight * (ten?.size ?? 0)).toBeGreaterThan(2.499 /* mm */);
  });

  it('prints larger numbers on a longer tape', () => {
    const largest = (tape: TapeContent) =>
      Math.max(...withRole(inkOf(tape), 'text', 'label').map(({ size }) => size));
    expect(largest(inventedTape(20, 100, { ...inventedSetup, reach: 2 }))).toBeGreaterThan(
      1.2 * largest(inventedTape(20, 100)),
    );
  });

  it('keeps far labels off the grey paper and near labels on it', () => {
    const all = inkOf(inventedTape(3, 100));
    const bands = withRole(all, 'rect', 'near-band').map(inkBox);
    const labels = withRole(all, 'text', 'label');
    const onBand = labels.filter((label) => bands.some((band) => overlap(inkBox(label), band)));
    const inBand = labels.filter((label) => bands.some((band) => isInside(inkBox(label), band)));
    expect(onBand).toEqual(inBand);
    expect(new Set(onBand.map(({ text }) => text))).toEqual(new Set(['3', '4', '5', '6', '7', '10']));
  });

  it('shades the near edge only where there is a near branch, and draws none on a strip too narrow for it', () => {
    expect(withRole(items(drawing), 'rect', 'near-band')).toHaveLength(5);
    expect(withRole(inkOf(inventedTape(20, 100)), 'rect', 'near-band')).toEqual([]);
    const narrow = inkOf(inventedTape(5, 100, inventedSetup, { form: { ...inventedForm, width: 8 } }));
    expect(withRole(narrow, 'rect', 'near-band')).toEqual([]);
    expect(withRole(narrow, 'text', 'label').map(({ text }) => text)).not.toContain('5');
  });

  it('draws a leader to a ten that had to give way, and to nothing else', () => {
    const at = (label: number, along: number): TapeTick => ({
      range: si(label),
      label,
      along: si(along),
      branch: 'far',
    });
    const ticks = [at(10, 0), at(20, 0.0005), at(30, 0.012), at(40, 0.024)];
    const mains = content.mains.map((tape) => ({ ...tape, ticks }));
    const crowded = { ...content, before: [], after: [], mains };
    expect(withRole(items(layOutTape(crowded, { ...print, copies: 1 })), 'line', 'leader')).toHaveLength(2);
  });

  it('says on every strip, up to its end, that it is a draft when it is one', () => {
    expect(withRole(items(drawing), 'text', 'draft')).toEqual([]);
    const words = withRole(inkOf({ ...content, isDraft: true }), 'text', 'draft');
    for (const { left, right, top, bottom } of strips(drawing))
      expect(
        words.filter(({ x, y, text }) => text === 'DRAFT' && x > left && x < right && y > top && y < bottom)
          .length,
      ).toBeGreaterThan(2);
  });

  it('has a bar of 100 mm and one of 4 in, upright like the strips', () => {
    for (const [role, length] of [
      ['check-100-mm', 100],
      ['check-4-in', 101.6],
    ] as const) {
      const [bar] = withRole(items(drawing), 'line', role);
      expect(bar?.from.x).toBe(bar?.to.x);
      expect(Math.abs((bar?.to.y ?? 0) - (bar?.from.y ?? 0) - length)).toBeLessThan(1e-9 /* mm */);
    }
    expect(textsOf(drawing)).toEqual(expect.arrayContaining(['100 mm', '4 in', 'Print at 100 %']));
  });

  it('says title, build, air, date and cautions', () => {
    const texts = textsOf(drawing);
    expect(texts).toEqual(expect.arrayContaining([content.title, ...content.subtitle]));
    expect(texts.join(' ')).toContain('with a backstop behind each');
  });

  it.each([
    ['a4', 3, 1],
    ['letter', 3, 1],
    ['a4', 40, 3],
    ['letter', 60, 4],
  ] as const)(
    'keeps all ink of %s with %d copies on printable paper, in %d pages or fewer',
    (paper, copies, most) => {
      const { pages } = layOutTape(inventedTape(3, 100), { paper, copies });
      expect(pages.length).toBeLessThanOrEqual(most);
      for (const page of pages) {
        expect(page).toMatchObject(paperSizes[paper]);
        expect(inkOutside(page, unprintableEdge)).toEqual([]);
      }
      expect(strips({ pages })).toHaveLength(copies + 2);
    },
  );

  it('runs a long tape on to a second strip, each mark where the one strip would have it', () => {
    const long = { ...inventedTape(20, 100, { ...inventedSetup, reach: 6 }), before: [], after: [] };
    const drawn = layOutTape(long, { paper: 'a4', copies: 1, join: true });
    const [upper, lower, ...more] = strips(drawn);
    if (upper === undefined || lower === undefined) throw new Error('no two strips');
    expect(more).toEqual([]);
    const seam = withRole(items(drawn), 'line', 'join-line')[0]?.from.y ?? Number.NaN;
    expect(seam).toBe(upper.fold);
    const before = upper.ticks.map((tick) => middleOf(tick) - upper.zero);
    const after = lower.ticks.map((tick) => middleOf(tick) - lower.top + seam - upper.zero);
    const wanted = long.mains.flatMap(({ ticks }) => ticks.map(({ along }) => 1000 * along));
    const errors = [...before, ...after].map((at, i) => Math.abs(at - (wanted[i] ?? Number.NaN)));
    expect(errors).toHaveLength(wanted.length);
    expect(Math.max(...errors)).toBeLessThan(1e-9 /* mm */);
  });
});
