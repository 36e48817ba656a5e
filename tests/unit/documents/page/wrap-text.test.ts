import { describe, expect, it } from 'vitest';
import { textWidth } from '../../../../src/documents/page/text-measure.ts';
import { shortenedText, wrapText } from '../../../../src/documents/page/wrap-text.ts';

const space = { width: 20, size: 2.4 };

describe('wrapText', () => {
  it('keeps a short text on one line', () => expect(wrapText('far  shot', space)).toEqual(['far shot']));

  it('breaks at blanks into lines that fit', () => {
    const lines = wrapText('Check the tape at three ranges before relying on it.', space);
    expect(lines.length).toBeGreaterThan(2);
    expect(lines.filter((line) => textWidth(line, 2.4) > 20)).toEqual([]);
    expect(lines.join(' ')).toBe('Check the tape at three ranges before relying on it.');
  });

  it('breaks a word longer than a line and loses nothing', () => {
    const word = 'x'.repeat(40);
    const lines = wrapText(`a ${word} b`, space);
    expect(lines.filter((line) => textWidth(line, 2.4) > 20)).toEqual([]);
    expect(lines.join('').replaceAll(' ', '')).toBe(`a${word}b`);
  });

  it('gives no line for nothing', () => expect(wrapText('  ', space)).toEqual([]));

  it('puts a character wider than the space on a line of its own', () =>
    expect(wrapText('WW', { width: 0.5, size: 2.4 })).toEqual(['W', 'W']));
});

describe('shortenedText', () => {
  it('leaves what fits', () => expect(shortenedText('−4 ft/s', space)).toBe('−4 ft/s'));

  it('cuts what does not and says so', () => {
    const text = shortenedText('a name that is far too long', space);
    expect(text).toMatch(/^a name.*\S…$/);
    expect(textWidth(text, 2.4)).toBeLessThanOrEqual(20);
  });
});
