import { existsSync, readdirSync, readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { reportText } from '../../src/cli/output/report-text.ts';
import { ask } from '../../src/reports/ask.ts';
import type { GivenTo, QuestionName } from '../../src/reports/questions.ts';
import { openSetup } from '../../src/setup/open.ts';
import { atWidth } from './terminal.ts';

const setups = readdirSync('examples')
  .map((name) => `examples/${name}/setup.yaml`)
  .filter((path) => existsSync(path));

/** What is asked besides, kept small: how much is computed does not change how it is printed. */
const QUESTIONS_ASKED = {
  check: {},
  fly: {},
  marks: {},
  fit: {},
  tape: {},
  card: {},
  cant: {},
  slope: {},
  pins: {},
  misjudge: {},
  wind: {},
  swing: {},
  broadhead: {},
  scatter: { arrows: 24, every: '50 yd' },
  compare: { arrows: 0 },
  vary: { over: ['arrow.parts.point.mass=100gr,125gr'], at: '40 yd' },
  tune: {},
} as const satisfies { readonly [Name in QuestionName]: GivenTo<Name> };

const names = Object.keys(QUESTIONS_ASKED).filter((name): name is QuestionName => name in QUESTIONS_ASKED);
const longest = (text: string): number =>
  Math.max(...text.split('\n').map((line) => Array.from(line).length));

describe.each(setups)('%s on a screen', (path) => {
  const setup = openSetup(readFileSync(path, 'utf8'), path);
  // A file without other builds has nothing to compare with.
  const asked = names.filter((name) => name !== 'compare' || setup.setup.builds !== undefined);
  it.each(asked)('%s: no line is longer than the terminal is wide, and a screen is enough', async (name) => {
    for (const units of ['imperial', 'metric'] as const) {
      const { blocks } = await ask(name, setup, QUESTIONS_ASKED[name], { units });
      for (const width of [80, 100, 120])
        for (const reading of ['short', 'whole'] as const)
          expect(longest(reportText(blocks, { width, reading, files: ['out.pdf'] }))).toBeLessThanOrEqual(
            width,
          );
      const screen = reportText(blocks, { width: 80, reading: 'short', files: ['out.pdf'] });
      expect(screen.trimEnd().split('\n').length).toBeLessThanOrEqual(40);
    }
  });
});

describe('the first line answers', () => {
  const setup = 'examples/mountain-hunt/setup.yaml';
  it.each([
    [['fly'], /^With the 20 yd mark: [\d.]+ in low at \d+ yd/],
    [['marks'], /^Good to ± [\d.]+ in at 20 yd, [\d.]+ in at 60 yd and [\d.]+ in at 100 yd\.$/],
    [['marks', '--uncalibrated'], /^No marks shot: good to ± [\d.]+ in at 20 yd/],
    [['slope'], /^At 40 yd on a slope of 20° set [\d.]+ yd uphill and [\d.]+ yd downhill\.$/],
    [['wind'], /^10 mph from the side: [\d.]+ in at 40 yd, [\d.]+ in at 60 yd and [\d.]+ in at 100 yd\.$/],
    [['swing'], /^This arrow steers itself well: the centre of pressure is [\d.]+ in/],
    [['broadhead'], /^From a clean launch the broadhead hits [\d.]+ in high \(± [\d.]+ in\) at 30 yd/],
    [
      ['vary', '--over', 'arrow.parts.point.mass=100gr,125gr'],
      /^Point mass 100 to 125 gr: mass \d+ to \d+ gr/,
    ],
  ])('%s', async ([name = '', ...more], line) => {
    const { out } = await atWidth(200, [name, setup, ...more]);
    expect(out.split('\n')[0]).toMatch(line);
  });
});
