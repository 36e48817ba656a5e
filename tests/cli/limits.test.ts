import { expect, it } from 'vitest';
import { atTerminal } from './terminal.ts';

const example = 'examples/mountain-hunt/setup.yaml';
const tape = ['tape', example, '--out', 'tape.svg'];
const builds = 'examples/which-build/setup.yaml';
/** A thousand values. */
const vary = ['vary', example, '--over', 'arrow.mass=400gr:499.9gr:0.1gr'];

it.each([
  [
    'masses that spread by pounds',
    ['scatter', example, '--mass', '1000gr'],
    /--mass: 1000gr is too large to be right. It takes at most 50 gr/,
  ],
  ['a negative spread', ['scatter', example, '--head', '-1 deg'], /--head: -1 deg must not be negative/],
  ['more copies than a page holds', [...tape, '--copies', '61'], /from 0 to 60/],
  ['tapes for every speed there is', [...tape, '--neighbours', '7'], /from 0 to 6/],
  ['a million arrows', ['scatter', example, '--arrows', '1000000'], /from 24 to 100000/],
  ['no count at all', ['scatter', example, '--seed', ''], /whole number/],
  [
    'pins every hair of a range',
    ['pins', example, '--every', '0.001in'],
    /--every: .*too small.*at least 0\.1 yd/,
  ],
  ['a pin for the end of the world', ['pins', example, '--set', '1e9yd'], /--set: .*too large/],
  ['a slider to the end of the world', ['pins', example, '--to', '1e9yd'], /--to: .*too large/],
  ['a step backwards', [...tape, '--step=-2fps'], /--step/],
  ['a step of nothing', [...tape, '--step', '0fps'], /--step/],
  ['a step from bow to rifle', [...tape, '--step', '500fps'], /--step/],
  [
    'rows nearer than the arrow flies free',
    ['fly', example, '--to', '0.5yd', '--every', '0.5yd'],
    /--to: .*string/,
  ],
  ['misses nearer than that', ['swing', example, '--to', '0.5yd', '--every', '0.5yd'], /--to: .*string/],
  [
    'broadheads nearer than that',
    ['broadhead', example, '--to', '0.5yd', '--every', '0.5yd'],
    /--to: .*string/,
  ],
  ['a tape to the end of the world', ['tape', example, '--to', '1e9yd'], /--to: 1e9yd is too far for a tape/],
  ['a tape beyond numbers', ['tape', example, '--to', '1e308yd'], /--to: .*too far for a tape/],
  [
    'rows to the end of the world',
    ['fly', example, '--to', '1e9yd', '--every', '1e8yd'],
    /--to: .*farther than any arrow/,
  ],
  ['a sweep read at the end of the world', [...vary, '--at', '1e9yd'], /--at: .*too large.*3000 yd/],
  ['a sweep read behind the archer', [...vary, '--at=-1yd'], /--at: -1yd must not be negative/],
  ['a sweep in no wind of this world', [...vary, '--crosswind=1e308mph'], /--crosswind: .*too large/],
  [
    'a sweep of a million',
    [...vary, '--over', 'arrow.diameter=0.2in:0.2999in:0.0001in'],
    /--over: that would be 1000000 comb/,
  ],
  [
    'a sweep of one key twice',
    [...vary, '--over', 'arrow.mass=400gr,450gr'],
    /--over: arrow\.mass is varied twice/,
  ],
  [
    'a sweep of four numbers',
    ['vary', example, '--over', 'arrow.mass=1:2:3:4'],
    /--over .*more than three numbers/,
  ],
  ['a ring smaller than nothing', ['compare', builds, '--ring=-1in'], /--ring: .*greater than zero/],
  ['a ring of nothing', ['compare', builds, '--ring=0in'], /--ring: .*greater than zero/],
  [
    'chances at every hair of a range',
    ['misjudge', example, '--every', '0.05yd'],
    /--every: that would be 801 rows. Write a step that gives at most 500/,
  ],
  ['a bow held upside down', ['misjudge', example, '--cant', '1e9deg'], /--cant: .*at most 45 deg/],
  ['gusts of no world', ['misjudge', example, '--gusts', '1e308mph'], /--gusts: .*at most 100 mph/],
  ['standard input twice', ['compare', '-', '-'], /standard input can be read only once/],
  ['standard input by two names', ['compare', '/dev/stdin', '-'], /standard input can be read only once/],
  ['a new file called -', ['new', '-'], /- is not a file name/],
])('%s: refused with advice', async (_, argv, message) => {
  const { code, err, out, files } = await atTerminal(argv);
  expect(err).toMatch(message);
  expect(code).toBe(2);
  expect(out).toBe('');
  expect(files.size).toBe(0);
});

it('rows that are still on the string are told of', async () => {
  const { out } = await atTerminal(['fly', example, '--to', '3yd', '--every', '0.25yd']);
  expect(out).toMatch(/Rows begin at \d\.\d+ yd: closer than that/);
});

it('rows beyond what the arrow carries are left out and told of', async () => {
  const { out } = await atTerminal(['fly', example, '--to', '1000yd', '--every', '100yd']);
  expect(out).toMatch(/Rows end at 500 yd/);
  expect(out).not.toMatch(/^ *600 /m);
});
