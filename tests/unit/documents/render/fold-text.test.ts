import fc from 'fast-check';
import { expect, it } from 'vitest';
import { foldText } from '../../../../src/documents/render/fold-text.ts';

const longest = (text: string): number =>
  Math.max(...text.split('\n').map((line) => Array.from(line).length));

it('breaks at blanks, and keeps the breaks that are meant', () => {
  expect(foldText('one two three\nfour', 9)).toBe('one two\nthree\nfour');
});
it('hangs under the words of a list, and under the value beside a name', () => {
  expect(foldText('- the bar, its top to the right', 20)).toBe('- the bar, its top\n  to the right');
  expect(foldText('spin      0.56 rev/yd, clockwise from behind', 30)).toBe(
    'spin      0.56 rev/yd,\n          clockwise from\n          behind',
  );
});
it('a command line goes on after a backslash, as a shell takes it', () => {
  expect(foldText('  quillpath tape a.yaml --out camp.pdf', 30)).toBe(
    '  quillpath tape a.yaml \\\n  --out camp.pdf',
  );
});
it('no line is longer than the width, and no word is lost', () => {
  fc.assert(
    fc.property(
      fc.array(fc.string({ minLength: 1, maxLength: 60 })),
      fc.integer({ min: 20, max: 120 }),
      (words, width) => {
        const text = words.join(' ');
        const folded = foldText(text, width);
        expect(longest(folded)).toBeLessThanOrEqual(width);
        expect(folded.replace(/\s/g, '')).toBe(text.replace(/\s/g, ''));
      },
    ),
  );
});
