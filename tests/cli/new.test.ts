import { describe, expect, it } from 'vitest';
import { exampleValues } from '../../src/setup/example-values.ts';
import { readSetup } from '../../src/setup/read.ts';
import { starterSetup } from '../../src/setup/starter.ts';
import { atTerminal, atTerminalAnew } from './terminal.ts';

const FIVE = ['274', '417 grs', '.265', '4 3/4"', '33 1/2'];
const asked = async (answers: readonly string[], ...more: readonly string[]) => {
  const seen = await atTerminalAnew(['new', 'mine.yaml', ...more], {}, null, answers);
  return { ...seen, text: String(seen.files.get('mine.yaml') ?? '') };
};

describe('new at a terminal asks', () => {
  it('for five numbers, each as it is typed, and writes the commented file with them', async () => {
    const { text, code, out } = await asked([...FIVE, '']);
    expect(code).toBe(0);
    const { bow, arrow, launch, sight } = readSetup(text, 'mine.yaml');
    // By hand: 274 ft/s, 417 gr, 0.265 in, 4.75 in and 33.5 in.
    const found = [launch.speed, arrow.mass, arrow.diameter, bow.peep_height, sight.peep_to_pin].map(Number);
    const meant = [274 * 0.3048, 417 * 6.479891e-5, 0.265 * 0.0254, 4.75 * 0.0254, 33.5 * 0.0254];
    // In SI; relative: the rounding of a factor or two.
    for (const [i, value] of meant.entries())
      expect(Math.abs(Number(found[i]) / value - 1)).toBeLessThan(1e-9 /* relative */);
    expect(text).toContain('# Eye above the arrow at full draw, square to the arrow; yours.');
    expect(out).toMatch(/Read as 274 fps\.[\s\S]*quillpath check mine\.yaml/);
  });

  it('a light arrow is not held to the parts of the example', async () => {
    const { text } = await asked(['290', '310 gr', '0.3 in', '4 in', '30 in', '']);
    expect(readSetup(text, 'mine.yaml').arrow.parts).toBeUndefined();
    expect(text).toContain('  #   shaft:');
  });

  it('again where a value cannot be, saying why', async () => {
    const { out, text } = await asked(['900 fps', 'fast', '274', '417', '.265', '4.75', '33.5', '']);
    expect(out).toContain(
      '"900 fps" is above the limit. No bow drawn by hand shoots slower or faster. Write',
    );
    expect(out).toContain('"fast" does not begin with a number.');
    expect(text).toContain('speed: 274 fps');
  });

  it('back from one question to the one before', async () => {
    const { text } = await asked(['274', '471 gr', 'b', '417 gr', '.265', '4.75', '33.5', '']);
    expect(text).toContain('mass: 417 gr');
    expect(text).not.toContain('471');
  });

  it('a value that is the example’s is one’s own once it was typed', async () => {
    const { text } = await asked(['281', '452', '0.246', '4.6', '33', '']);
    expect(exampleValues(text).filter((key) => /peep|mass$|diameter|speed/.test(key))).toEqual([]);
  });

  it('more, where more is wanted, and marks in the archer’s words', async () => {
    const blanks = Array.from({ length: 10 }, () => '');
    const { text, out } = await asked([
      ...FIVE,
      'm',
      '25 yd',
      ...blanks,
      '25 12',
      '60 yd 31.9 6 arrows 5 in',
      '50',
      '',
    ]);
    const setup = readSetup(text, 'mine.yaml');
    expect(setup.sight.scale?.travel_per_unit).toBe('unknown');
    expect(setup.marks).toHaveLength(2);
    expect(out).toContain('Understood: range 60 yd, reading 31.9, arrows 6, group 5 in.');
  });

  it('parts that are the archer’s stand in the file, the shaft weighs what the rest leaves', async () => {
    const parts = ['', '28 in', '', '100 gr', '50 gr', '9 gr', '6.8 gr', '2 1/4"', '0.465 in', '', ''];
    const { text } = await asked([...FIVE, 'more', ...parts, '']);
    const { arrow } = readSetup(text, 'mine.yaml');
    expect([arrow.parts?.point !== undefined, arrow.parts?.shaft?.mass_per_length]).toEqual([
      true,
      undefined,
    ]);
  });

  it.each([
    ['q', ['274', 'q']],
    ['the end of what is typed', ['274']],
    ['q at the end', [...FIVE, 'q']],
  ])('%s leaves nothing behind', async (_, answers) => {
    const { files, code, out } = await asked(answers);
    expect([files.size, code]).toEqual([0, 0]);
    expect(out).toContain('Nothing was written.');
  });

  it('--metric asks and writes in metric units', async () => {
    const { text } = await asked(['84', '27', '6.5', '118', '850', ''], '--metric');
    expect(text).toMatch(/speed: 84 m\/s[\s\S]*peep_to_pin: 850 mm/);
  });

  it('--template writes the commented file at once', async () =>
    expect((await asked([], '--template')).text).toBe(starterSetup({ units: 'imperial' })));
});

it('without a terminal --metric is --units metric', async () => {
  const { files } = await atTerminal(['new', 'mine.yaml', '--metric']);
  expect(files.get('mine.yaml')).toBe(starterSetup({ units: 'metric' }));
});
