import { describe, expect, it } from 'vitest';
import { atTerminal } from './terminal.ts';

const example = 'examples/mountain-hunt/setup.yaml';
const YARD = 0.9144;
const OUT = ['--out', 'card.pdf'];

/** Of each question: what is asked besides, and the key of its JSON under which its rows are kept. */
const STEP = ['--every', '20 yd'];
const QUESTIONS: readonly (readonly [string, readonly string[], string])[] = [
  ['marks', STEP, 'rows'],
  ['tape', [], 'ticks'],
  ['card', [...STEP, ...OUT], 'rows'],
  ['cant', STEP, 'level_error'],
  ['slope', STEP, 'rows'],
  ['misjudge', STEP, 'rows'],
  ['wind', STEP, 'effects'],
];
/** All ranges in a part of an answer, m. */
const rangesIn = (data: unknown): readonly number[] =>
  [...JSON.stringify(data).matchAll(/"range_m":([\d.]+)/g)].map(([, range]) => Number(range));

describe('a list that is asked for to farther than the arrow gets', () => {
  const far = ['--from', '20 yd', '--to', '600 yd'];

  it.each(QUESTIONS)('ends before that with %s, and says so', async (name, more) => {
    const { code, out } = await atTerminal([name, example, ...far, ...more]);
    expect(code).toBe(0);
    expect(out.replaceAll('\n', ' ')).toMatch(
      /(cannot reach 5\d\d yd with any sight setting|[34]\d0 yd is so near .* told there), so the list stops short of it\./,
    );
  });

  it.each(QUESTIONS)(
    'tells in the JSON of %s where it ends, and holds no row from there on',
    async (name, more, rows) => {
      const { code, out } = await atTerminal([name, example, ...far, ...more, '--json']);
      expect(code).toBe(0);
      const data = JSON.parse(out);
      const beyond: number = name === 'tape' ? data.ends_before_m.reach : data.out_of_reach_m;
      const ranges = rangesIn(data[rows]);
      expect(ranges.length).toBeGreaterThan(0);
      expect(Math.max(...ranges)).toBeLessThan(beyond);
    },
  );

  it('is the same list as one that ends there by itself', async () => {
    const shortened = JSON.parse((await atTerminal(['wind', example, ...far, ...STEP, '--json'])).out);
    const last = Math.round(shortened.out_of_reach_m / YARD) - 20;
    const asked = await atTerminal([
      'wind',
      example,
      '--from',
      '20 yd',
      '--to',
      `${last} yd`,
      ...STEP,
      '--json',
    ]);
    expect(JSON.parse(asked.out)).toEqual({ ...shortened, out_of_reach_m: null });
  });

  it('leaves farther ranges out of a fit, and says so', async () => {
    const { code, out } = await atTerminal(['fit', example, '--to', '600 yd']);
    expect(code).toBe(0);
    const words = out.replaceAll('\n', ' ');
    expect(words).toMatch(
      /The marks are good to ± [\d.]+ in at 20 yd, .* From \d+ yd on, a mark may be anything\./,
    );
    expect(words).toMatch(
      /The arrow cannot reach 5\d[05] yd with any sight setting, so nothing is told of ranges from there on\./,
    );
    const data = JSON.parse((await atTerminal(['fit', example, '--to', '600 yd', '--json'])).out);
    expect(words).toContain(`cannot reach ${Math.round(data.out_of_reach_m / YARD)} yd`);
    // A fit to that range itself is a fit to all that is told.
    const near = JSON.parse((await atTerminal(['fit', example, '--json'])).out);
    expect([near.out_of_reach_m, near.residuals]).toEqual([null, data.residuals]);
  });

  it('begins beyond it only with an error', async () => {
    for (const [name, more] of [...QUESTIONS, ['fit', []] as const]) {
      const { code, err } = await atTerminal([name, example, '--from', '590 yd', '--to', '600 yd', ...more]);
      expect(err).toMatch(/^No answer: no setting of the sight hits at that range/);
      expect(code).toBe(1);
    }
  });
});

it('a card tells marks farther than its steepest slopes can be shot', async () => {
  const { out } = await atTerminal([
    'card',
    example,
    '--from',
    '50 yd',
    '--to',
    '450 yd',
    '--every',
    '50 yd',
    '--all',
    ...OUT,
  ]);
  expect(out).toMatch(/^\s+450 /m);
  expect(out.replaceAll('\n', ' ')).toContain('not all of these slopes can be told there');
});

it('shots from a stand end where the arrow does as well', async () => {
  const argv = ['slope', example, '--stand', '20 ft', '--stand-to', '600 yd'];
  const { code, out } = await atTerminal(argv);
  expect(code).toBe(0);
  expect(out.replaceAll('\n', ' ')).toMatch(
    /(cannot reach|so near the end) .*so the list stops short of it\./,
  );
  const data = JSON.parse((await atTerminal([...argv, '--json'])).out);
  expect(Math.max(...rangesIn(data.stand_rows))).toBeLessThan(data.stand_out_of_reach_m);
});
