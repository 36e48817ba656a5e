import { describe, expect, it } from 'vitest';
import { QuestionError } from '../../../../src/reports/asked/question-error.ts';
import { oldTapeFrom } from '../../../../src/reports/tape/old-tape-text.ts';

describe('an old tape from a spreadsheet', () => {
  it('reads the rows that the tape writes, in SI', () => {
    const { places } = oldTapeFrom('range (yd),along (mm)\r\n20,0.000\r\n21,0.414\r\n');
    expect(places).toHaveLength(2);
    expect(places[0]).toEqual({ range: 18.288, along: 0 });
    expect(Math.abs((places[1]?.along ?? Number.NaN) - 0.000414)).toBeLessThan(1e-12 /* m, rounding */);
  });

  it('reads metres, columns in any order, a mark of byte order and empty lines', () => {
    const { places } = oldTapeFrom('\uFEFFnote,along (in),range (m)\n,0,20\n\nlast,1,30\n');
    expect(places.map(({ range }) => range)).toEqual([20, 30]);
    expect(places[1]?.along).toBe(0.0254);
  });

  it.each([
    ['nothing', '', /empty/],
    ['another table', 'range (yd),reading\n20,1\n', /no column "along \(mm\)"/],
    ['a unit that it is not in', 'range (in),along (mm)\n20,1\n', /no column "range \(yd\)"/],
    ['a missing number', 'range (yd),along (mm)\n20,0\n30,\n', /line 3 has "" for along/],
    ['a word', 'range (yd),along (mm)\ntwenty,0\n30,5\n', /line 2 has "twenty" for range/],
    ['one row', 'range (yd),along (mm)\n20,0\n', /fewer than two rows/],
    ['a mark that runs back', 'range (yd),along (mm)\n20,0\n30,5\n40,4\n', /line 4 does not lie beyond/],
  ])('refuses %s', (_, text, message) => {
    expect(() => oldTapeFrom(text)).toThrow(QuestionError);
    expect(() => oldTapeFrom(text)).toThrow(message);
  });
});
