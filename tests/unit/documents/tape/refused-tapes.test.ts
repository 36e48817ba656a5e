import { describe, expect, it } from 'vitest';
import { TapeTooLong } from '../../../../src/documents/tape/strip-length.ts';
import { layOutTape, type TapePrint } from '../../../../src/documents/tape/tape.ts';
import type { TapeContent, TapeTick } from '../../../../src/documents/tape/tape-content.ts';
import { DomainError } from '../../../../src/quantities/domain-error.ts';
import { si } from '../../../../src/quantities/quantity.ts';
import { inventedForm, inventedSetup, inventedTape } from '../invented-tape.ts';

const print: TapePrint = { paper: 'a4', copies: 3 };

describe('layOutTape refuses', () => {
  const content = inventedTape();
  const withTicks = (ticks: readonly TapeTick[]) => ({
    ...content,
    mains: content.mains.map((tape) => ({ ...tape, ticks })),
  });
  const tooLong = (tape: TapeContent): TapeTooLong => {
    try {
      layOutTape(tape, print);
    } catch (error) {
      if (error instanceof TapeTooLong) return error;
    }
    throw new Error('the tape was drawn');
  };

  it('a tape longer than the sheet, and knows its length and how much of it would fit', () => {
    const long = inventedTape(20, 100, { ...inventedSetup, reach: 6 });
    const { message, longest, room } = tooLong(long);
    expect(message).toMatch(/length of the tape on paper.*at most \d+/);
    const fits = inventedTape(20, longest ?? Number.NaN, { ...inventedSetup, reach: 6 });
    expect(layOutTape(fits, print).pages.length).toBeGreaterThan(0);
    const more = inventedTape(20, (longest ?? Number.NaN) + 1, { ...inventedSetup, reach: 6 });
    expect(tooLong(more).room).toBe(room);
  });

  it('a tape longer than its place on the sight', () => {
    const placed = { ...content, form: { ...inventedForm, length: 30 } };
    expect(tooLong(placed).room).toBe(30);
  });

  it('a tape so short that its ticks would run together, and asks for the reason', () =>
    expect(() => layOutTape(inventedTape(20, 100, { ...inventedSetup, reach: 0.04 }), print)).toThrow(
      /length of the tape .*81 ticks would run together.*travel_ratio/,
    ));

  it.each([-1, 1.5, Number.NaN])('%d copies', (copies) =>
    expect(() => layOutTape(content, { ...print, copies })).toThrow(DomainError),
  );

  it.each([4.9, 20.1, Number.NaN])('a strip %d mm wide', (width) =>
    expect(() => layOutTape({ ...content, form: { ...inventedForm, width } }, print)).toThrow(DomainError),
  );

  it('a tape without ticks, a neighbour without, and a sheet without tapes', () => {
    expect(() => layOutTape(withTicks([]), print)).toThrow(DomainError);
    const empty = content.before.map((tape) => ({ ...tape, ticks: [] }));
    expect(() => layOutTape({ ...content, before: empty }, print)).toThrow(DomainError);
    expect(() => layOutTape({ ...content, mains: [] }, print)).toThrow(DomainError);
  });

  it.each([Number.NaN, Number.POSITIVE_INFINITY])('a mark at %d', (along) => {
    const ticks = [{ range: si<'m'>(20), label: 20, along: si<'m'>(along), branch: 'far' as const }];
    expect(() => layOutTape(withTicks(ticks), print)).toThrow(DomainError);
  });

  it.each([-1, 1000, Number.NaN])('a range printed as %d', (label) => {
    const ticks = [{ range: si<'m'>(20), label, along: si<'m'>(0), branch: 'far' as const }];
    expect(() => layOutTape(withTicks(ticks), print)).toThrow(DomainError);
  });

  it('cautions that would push the tape off the sheet', () =>
    expect(() => layOutTape({ ...content, warnings: Array(60).fill('Careful.') }, print)).toThrow(
      DomainError,
    ));
});
