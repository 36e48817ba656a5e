import { describe, expect, it } from 'vitest';
import { documentDate } from '../../src/cli/world/document-date.ts';
import { atTerminal } from './terminal.ts';

const EXAMPLE = 'examples/mountain-hunt/setup.yaml';
/** The last second of a day on the wall clock of whoever runs the tests. */
const now = () => new Date(2026, 3, 18, 23, 59, 59);

/*
 * SOURCE_DATE_EPOCH specification 1.1, reproducible-builds.org, sections 4.1 and 4.2 (from memory): an ASCII decimal integer
 * without fraction, as `date +%s` prints it, seconds since 1970-01-01 00:00:00 UTC; it is used in place of the current time; a
 * build should exit with an error when it is malformed.
 */
describe('the date of a document', () => {
  it('is the day of the wall clock, and the moment itself', () =>
    expect(documentDate({ now }, undefined)).toEqual({ day: '2026-04-18', madeAt: now() }));

  it('is SOURCE_DATE_EPOCH at Greenwich when there is one: a thousand million seconds ended in September 2001', () =>
    expect(documentDate({ now, sourceDateEpoch: '1000000000' }, undefined)).toEqual({
      day: '2001-09-09',
      madeAt: new Date('2001-09-09T01:46:40Z'),
    }));

  it('is what was asked for before anything else, and then nothing else is looked at', () => {
    for (const sourceDateEpoch of [undefined, '1000000000', 'nonsense'])
      expect(documentDate({ now, sourceDateEpoch }, '2024-02-29')).toEqual({
        day: '2024-02-29',
        madeAt: new Date('2024-02-29T12:00:00Z'),
      });
  });

  it.each(['0', '253402300799'])(
    'takes SOURCE_DATE_EPOCH %s, the first or the last second',
    (sourceDateEpoch) =>
      expect(documentDate({ now, sourceDateEpoch }, undefined).madeAt.getTime()).toBe(
        1000 * Number(sourceDateEpoch),
      ),
  );

  it.each(['', ' ', '1.5', '1e9', '-1', '+5', '010', '0x10', '١٢٣', '2026-04-18', '253402300800', '1 2'])(
    'SOURCE_DATE_EPOCH "%s" is refused with what to write',
    (sourceDateEpoch) =>
      expect(() => documentDate({ now, sourceDateEpoch }, undefined)).toThrow(
        `SOURCE_DATE_EPOCH is "${sourceDateEpoch}", which is no date for a document. Set it to whole seconds since 1970, ` +
          'as date +%s prints them, or unset it, or write --date 2026-04-18.',
      ),
  );

  it.each(['', 'today', '18.04.2026', '2026-02-30', '2026-4-1'])(
    '--date "%s" is refused with what to write',
    (asked) =>
      expect(() => documentDate({ now }, asked)).toThrow(
        `--date: "${asked}" is no day. Write year, month and day, up to 2100: --date 2026-04-18.`,
      ),
  );
});

// Tapes, pocket cards, comparisons and tuning evenings: same-bytes.test.ts.
describe('a document', () => {
  const CASES: readonly (readonly [name: string, ...more: readonly string[]])[] = [
    ['card', EXAMPLE],
    ['fit', EXAMPLE],
    ['pins', EXAMPLE],
  ];
  it.each(CASES.map((argv) => [argv.join(' '), argv] as const))(
    '%s carries the day asked for',
    async (_, argv) => {
      const { code, files } = await atTerminal([...argv, '--out', 'paper.svg', '--date', '2024-02-29']);
      expect(code).toBe(0);
      const paper = String(files.get('paper.svg'));
      expect(paper).toContain('2024-02-29');
    },
  );

  it('a PDF names that day as its making', async () => {
    const { files } = await atTerminal(['fit', EXAMPLE, '--out', 'fit.pdf', '--date', '2024-02-29']);
    const paper = Buffer.from(files.get('fit.pdf') ?? '').toString('latin1');
    expect(paper).toContain('(D:20240229120000Z)');
  });

  it('a day that is none is refused by name, with exit code 2', async () => {
    const { code, err, files } = await atTerminal(['fit', EXAMPLE, '--out', 'f.svg', '--date', '2026-02-30']);
    expect(err).toBe(
      '--date: "2026-02-30" is no day. Write year, month and day, up to 2100: --date 2026-04-18.\n',
    );
    expect(code).toBe(2);
    expect(files.size).toBe(0);
  });
});
