import { describe, expect, it } from 'vitest';
import { type Drawing, paperSizes } from '../../../../src/documents/page/drawing.ts';
import { layOutTape, type TapePrint } from '../../../../src/documents/tape/tape.ts';
import type { TapeContent } from '../../../../src/documents/tape/tape-content.ts';
import { DomainError } from '../../../../src/quantities/domain-error.ts';
import { si } from '../../../../src/quantities/quantity.ts';
import { inkBox, inkOutside, isInside, overlap, overlaps, unprintableEdge, withRole } from '../ink-box.ts';
import { inventedSetup, inventedTape, inventedTicks } from '../invented-tape.ts';

const print: TapePrint = { paper: 'a4', copies: 3 };
const items = (drawing: Drawing) => drawing.pages.flatMap((page) => page.items);
const textsOf = (drawing: Drawing) =>
  items(drawing).flatMap((item) => (item.kind === 'text' ? [item.text] : []));

/** The strips of a one-row sheet by their cut lines, left to right. */
function strips(drawing: Drawing) {
  const cuts = withRole(items(drawing), 'line', 'cut').filter(({ from, to }) => from.x === to.x);
  const edges = cuts.map(({ from }) => from.x).toSorted((a, b) => a - b);
  return Array.from({ length: edges.length / 2 }, (_, i) => ({
    left: edges[2 * i] ?? Number.NaN,
    right: edges[2 * i + 1] ?? Number.NaN,
  }));
}

const near = { ...inventedSetup, reach: 2 };

describe('layOutTape', () => {
  const content = inventedTape();
  const drawing = layOutTape(content, print);
  const ticks = withRole(items(drawing), 'line', 'tick');

  it('draws the main strip in copies, then one strip for each nearby speed', () => {
    expect(strips(drawing)).toHaveLength(5);
    const names = withRole(items(drawing), 'text', 'name').map(({ text }) => text);
    expect(names).toEqual(['281 ft/s', '281 ft/s', '281 ft/s', '−4 ft/s', '+4 ft/s']);
  });

  it('draws one tick a yard on every strip', () => expect(ticks).toHaveLength(5 * 91));

  it('draws every tick of a strip at its mark, from the zero, to the rounding of a double', () => {
    const zeros = withRole(items(drawing), 'polyline', 'zero-shot').map(({ points }) => points[0]?.y ?? 0);
    const strip = ticks.slice(0, 91);
    const errors = strip.map(({ from }, i) =>
      Math.abs(from.y - (zeros[0] ?? 0) - 1000 * (content.ticks[i]?.along ?? Number.NaN)),
    );
    expect(Math.max(...errors)).toBeLessThan(1e-9 /* mm */);
  });

  it('makes every fifth tick longer and every tenth longest', () => {
    const lengthOf = (label: number) => {
      const tick = ticks[label - 10];
      return Math.abs((tick?.to.x ?? 0) - (tick?.from.x ?? 0));
    };
    expect(lengthOf(51)).toBeLessThan(lengthOf(55));
    expect(lengthOf(55)).toBeLessThan(lengthOf(50));
  });

  it('starts far ticks on the left cut line and near ticks on the right one', () => {
    const [strip] = strips(drawing);
    const edges = content.ticks.map(({ branch }) => (branch === 'far' ? strip?.left : strip?.right));
    expect(ticks.slice(0, 91).map(({ from }) => from.x)).toEqual(edges);
  });

  it('swaps the sides for a pointer on the right', () => {
    const mirrored = layOutTape(content, { ...print, pointer: 'right' });
    const [strip] = strips(mirrored);
    const edges = content.ticks.map(({ branch }) => (branch === 'near' ? strip?.left : strip?.right));
    expect(
      withRole(items(mirrored), 'line', 'tick')
        .slice(0, 91)
        .map(({ from }) => from.x),
    ).toEqual(edges);
  });

  it('puts longer ranges on the side the sight needs', () => {
    const at = (increases: 'down' | 'up', label: number) =>
      withRole(items(layOutTape({ ...content, increases }, print)), 'line', 'tick')[label - 10]?.from.y ?? 0;
    expect(at('down', 100)).toBeGreaterThan(at('down', 30));
    expect(at('up', 100)).toBeLessThan(at('up', 30));
  });

  it('leaves paper between ticks however they crowd', () => {
    const far = ticks.slice(0, 91).filter((_, i) => content.ticks[i]?.branch === 'far');
    const sorted = far.toSorted((a, b) => a.from.y - b.from.y);
    const gaps = sorted.slice(1).map((tick, i) => {
      const above = sorted[i] ?? tick;
      const white = tick.from.y - tick.stroke / 2 - (above.from.y + above.stroke / 2);
      return { white, spacing: tick.from.y - above.from.y };
    });
    // Below about 0.07 mm apart the finest stroke a printer can draw fills the gap.
    expect(gaps.filter(({ white, spacing }) => spacing > 0.07 && !(white > 0))).toEqual([]);
  });

  it('labels every ten on both branches', () => {
    const labels = withRole(items(drawing), 'text', 'label').map(({ text }) => text);
    const main = labels.slice(0, labels.length / 5);
    for (const ten of [10, 20, 30, 40, 50, 60, 70, 80, 90, 100]) expect(main).toContain(String(ten));
  });

  it('keeps every text clear of every other', () => {
    for (const paper of ['a4', 'letter'] as const) {
      const page = layOutTape(inventedTape(3, 100), { paper, copies: 3 }).pages[0];
      const boxes = (page?.items ?? []).filter(({ kind }) => kind === 'text').map(inkBox);
      expect(boxes.length).toBeGreaterThan(50);
      expect(overlaps(boxes)).toEqual([]);
    }
  });

  it('keeps labels clear of ticks, signs and cut lines', () => {
    const all = items(layOutTape(inventedTape(3, 100), print));
    const marks = [
      ...withRole(all, 'line', 'tick'),
      ...withRole(all, 'line', 'cut'),
      ...withRole(all, 'polyline', 'shot'),
      ...withRole(all, 'polyline', 'zero-shot'),
    ].map(inkBox);
    const touched = withRole(all, 'text', 'label').filter((label) =>
      marks.some((mark) => overlap(inkBox(label), mark)),
    );
    expect(touched).toEqual([]);
  });

  it('keeps far labels off the grey paper and near labels on it', () => {
    const all = items(layOutTape(inventedTape(3, 100), print));
    const bands = withRole(all, 'rect', 'near-band').map(inkBox);
    const labels = withRole(all, 'text', 'label');
    const onBand = labels.filter((label) => bands.some((band) => overlap(inkBox(label), band)));
    const inBand = labels.filter((label) => bands.some((band) => isInside(inkBox(label), band)));
    expect(onBand).toEqual(inBand);
    expect(new Set(onBand.map(({ text }) => text))).toEqual(new Set(['3', '4', '5', '10']));
  });

  it('draws a leader to a ten that had to give way, and to nothing else', () => {
    const at = (label: number, along: number) => ({
      range: si<'m'>(label),
      label,
      along: si<'m'>(along),
      branch: 'far' as const,
    });
    const crowded = { ...content, neighbours: [], ticks: [at(10, 0), at(20, 0.0005), at(30, 0.012)] };
    const all = items(layOutTape(crowded, { ...print, copies: 1 }));
    expect(withRole(all, 'line', 'leader')).toHaveLength(2);
  });

  it('marks the shot ranges and the zero, which shares one sign when it was shot', () => {
    expect(withRole(items(drawing), 'polyline', 'zero-shot')).toHaveLength(3);
    expect(withRole(items(drawing), 'polyline', 'shot')).toHaveLength(3 * 2);
    expect(withRole(items(drawing), 'polyline', 'zero')).toHaveLength(2);
  });

  it('points each sign at its mark', () => {
    const [zero] = withRole(items(drawing), 'polyline', 'zero-shot').filter(
      ({ points }) => (points[0]?.x ?? 0) < 100,
    );
    const tips = withRole(items(drawing), 'polyline', 'shot').map(({ points }) => points[0]?.y ?? 0);
    const zeroAt = zero?.points[0]?.y ?? Number.NaN;
    const [first, second] = content.calibration.slice(1).map(({ along }) => zeroAt + 1000 * along);
    expect(tips.filter((y) => Math.abs(y - (first ?? 0)) < 1e-9 /* mm */)).toHaveLength(3);
    expect(tips.filter((y) => Math.abs(y - (second ?? 0)) < 1e-9 /* mm */)).toHaveLength(3);
  });

  it('shades the near edge only where there is a near branch', () => {
    expect(withRole(items(drawing), 'rect', 'near-band')).toHaveLength(5);
    expect(withRole(items(layOutTape(inventedTape(20, 100), print)), 'rect', 'near-band')).toEqual([]);
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
      const drawn = pages.flatMap((page) => withRole(page.items, 'line', 'tick')).length;
      expect(drawn).toBe((copies + 2) * 98);
    },
  );

  it('prints larger numbers on a longer tape', () => {
    const largest = (tape: TapeContent) =>
      Math.max(...withRole(items(layOutTape(tape, print)), 'text', 'label').map(({ size }) => size));
    expect(largest(inventedTape(20, 100, near))).toBeGreaterThan(1.2 * largest(inventedTape(20, 100)));
  });

  it('shortens a name that is wider than a strip', () => {
    const all = items(layOutTape({ ...content, name: 'the arrow with the long name' }, print));
    const [name] = withRole(all, 'text', 'name');
    expect(name?.text).toMatch(/^the arrow.*…$/);
  });
});

describe('layOutTape refuses', () => {
  const content = inventedTape();

  it('a tape longer than the sheet, and says what to do', () => {
    const long = { ...content, ticks: inventedTicks(20, 100, { ...inventedSetup, reach: 6 }) };
    expect(() => layOutTape(long, print)).toThrow(
      /length of the tape on paper.*at most \d+ on one A4 sheet.*shorter range/,
    );
  });

  it('a tape so short that its ticks would run together, and asks for the reason', () => {
    const short = { ...content, ticks: inventedTicks(20, 100, { ...inventedSetup, reach: 0.04 }) };
    expect(() => layOutTape(short, print)).toThrow(
      /length of the tape .*81 ticks would run together.*travel_ratio/,
    );
  });

  it.each([0, -1, 1.5, Number.NaN])('%d copies', (copies) =>
    expect(() => layOutTape(content, { ...print, copies })).toThrow(DomainError),
  );

  it('a tape without ticks, and a neighbour without', () => {
    expect(() => layOutTape({ ...content, ticks: [] }, print)).toThrow(DomainError);
    expect(() => layOutTape({ ...content, neighbours: [{ name: 'x', ticks: [] }] }, print)).toThrow(
      DomainError,
    );
  });

  it.each([Number.NaN, Number.POSITIVE_INFINITY])('a mark at %d', (along) => {
    const ticks = [{ range: si<'m'>(20), label: 20, along: si<'m'>(along), branch: 'far' as const }];
    expect(() => layOutTape({ ...content, ticks }, print)).toThrow(DomainError);
  });

  it.each([-1, 1000, Number.NaN])('a range printed as %d', (label) => {
    const ticks = [{ range: si<'m'>(20), label, along: si<'m'>(0), branch: 'far' as const }];
    expect(() => layOutTape({ ...content, ticks }, print)).toThrow(DomainError);
  });

  it('cautions that would push the tape off the sheet', () =>
    expect(() => layOutTape({ ...content, warnings: Array(60).fill('Careful.') }, print)).toThrow(
      DomainError,
    ));
});
