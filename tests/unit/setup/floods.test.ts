import { describe, expect, it } from 'vitest';
import { MOST_KEPT, SetupError } from '../../../src/setup/problem.ts';
import { readSetup } from '../../../src/setup/read.ts';
import { SMALLEST } from './example-text.ts';
import { messagesOf, problemsOf } from './problems-of.ts';

/** What a text is refused with, and the processor time that took, s. */
function refusal(text: string): { readonly error: SetupError; readonly seconds: number } {
  const start = process.cpuUsage();
  try {
    readSetup(text, 'setup.yaml');
  } catch (error) {
    const { user, system } = process.cpuUsage(start);
    if (error instanceof SetupError) return { error, seconds: (user + system) / 1e6 };
    throw error;
  }
  throw new Error('the text was read as a setup');
}

describe('a text full of faults is refused with the first of them and a count', () => {
  // Each is as long as a file may be, and once took a minute, a gigabyte or a hundred thousand lines of errors.
  it.each([
    ['quotation marks', '"'.repeat(262_000)],
    ['entries without keys', `marks: [${'{},'.repeat(80_000)}{}]`],
    ['colons', `x\n${': '.repeat(60_000)}\n`.repeat(2)],
    ['colons on lines of their own', `${SMALLEST}${'x\n: : :\n'.repeat(30_000)}`],
    ['closing braces', '}'.repeat(260_000)],
    ['commas', `[${','.repeat(259_000)}]`],
    ['returns without a line', '\r'.repeat(260_000)],
    ['blanks inside a value', SMALLEST.replace('452 gr', `"4${' '.repeat(250_000)}gr"`)],
    ['tabs', `${SMALLEST}${'\tx: 1\n'.repeat(40_000)}`],
    [
      'keys that mean nothing in many entries',
      `marks: [${`{${Array.from({ length: 40 }, (_, i) => `k${i}: 1`).join(',')}},`.repeat(700)}]`,
    ],
    ['pointers to elsewhere', `${SMALLEST}title: [${'*a,'.repeat(80_000)}*a]\n`],
    [
      'keys that mean nothing',
      `${SMALLEST}${Array.from({ length: 20_000 }, (_, i) => `k${i}: 1\n`).join('')}`,
    ],
    [
      'keys that mean nothing in one section',
      `bow: {${Array.from({ length: 20_000 }, (_, i) => `k${i}: 1`).join(',')}}`,
    ],
  ])('%s', (_, text) => {
    const { error, seconds } = refusal(text);
    expect(error.problems.length).toBeLessThanOrEqual(MOST_KEPT);
    expect(error.count).toBeGreaterThanOrEqual(error.problems.length);
    expect(error.message.length).toBeLessThan(100_000);
    // Ten seconds are the longest that anybody waits for a sentence; other work on the machine triples what these take.
    expect(seconds).toBeLessThan(10 /* s */);
  });

  it('counts what it leaves out', () => {
    const { error } = refusal(
      `${SMALLEST}${Array.from({ length: 150 }, (_, i) => `k${i}: { a: 1 }\n`).join('')}marks: [${'{},'.repeat(99)}{}]\n`,
    );
    expect([error.problems.length, error.count]).toEqual([MOST_KEPT, 350]);
    expect(error.problems.slice(0, 150).map(({ path }) => path)).toEqual(
      Array.from({ length: 150 }, (_, i) => `k${i}`),
    );
  });
});

describe('what is echoed stays a short line', () => {
  it.each([
    ['a key of thousands of letters', `${SMALLEST}${'k'.repeat(9000)}: 1\n`],
    ['lists inside lists', '- '.repeat(5000)],
    ['a value of thousands of letters', SMALLEST.replace('452 gr', `"${'x'.repeat(9000)}"`)],
    ['a value of thousands of words', SMALLEST.replace('452 gr', `"${'4 gr '.repeat(2000)}"`)],
    ['a key on two lines', `${SMALLEST}? "a\n\n  b"\n: 1\n`],
    ['a value on two lines', SMALLEST.replace('452 gr', '"4\n\n  gr"')],
    ['a pointer with a long name', `${SMALLEST}title: *${'a'.repeat(9000)}\n`],
  ])('%s', (_, text) => {
    const messages = messagesOf(text);
    expect(messages.length).toBeGreaterThan(0);
    for (const message of messages) {
      expect(message).not.toMatch(/[\r\n\u2028\u2029]/);
      expect(message.length).toBeLessThan(600);
    }
  });
  it('and keeps the beginning', () => {
    expect(messagesOf(`${SMALLEST}knockpoint${'k'.repeat(900)}: 1\n`).join()).toContain('"knockpointk');
  });
});

it('a title or a name is as long as a line of a report, a note longer', () => {
  expect(messagesOf(`${SMALLEST}title: ${'x'.repeat(300)}\n`)).toEqual([]);
  expect(messagesOf(`${SMALLEST}title: ${'x'.repeat(301)}\n`).join()).toMatch(
    /title is a text of 301 characters\. Allowed: at most 300 characters\. Write a shorter one/,
  );
  const mark = (note: string) =>
    `${SMALLEST}drops: []\nmarks: [{ range: 20 yd, lateral: 1 in, note: ${note} }]\n`;
  expect(messagesOf(mark('x'.repeat(5000)))).toEqual([]);
  expect(messagesOf(mark('x'.repeat(5001)))).toHaveLength(1);
});

it('a mistyped key in a row of a list of drag coefficients is refused with the keys that there are', () => {
  const text = SMALLEST.replace(
    'mass: 452 gr',
    'mass: 452 gr, drag_coefficient: [{ reynolds: 20000, vals: 2.1 }, { reynolds: 30000, value: 2 }]',
  );
  const [problem] = problemsOf(text).filter(({ path }) => path.endsWith('vals'));
  expect(problem?.message).toContain('there is no key "vals" here. Allowed: reynolds, value.');
});

it('a tag in front of a key is refused too', () =>
  expect(messagesOf(SMALLEST.replace('mass: 452 gr', '!!str mass: 452 gr')).join('\n')).toMatch(
    /arrow\.mass: begins with an exclamation mark/,
  ));

it('a tag that would change what is written is refused, not dropped', () => {
  const messages = messagesOf(SMALLEST.replace('452 gr', '!!null 452 gr'));
  expect(messages.join('\n')).toMatch(/begins with an exclamation mark/);
});
