import { describe, expect, it } from 'vitest';
import { at } from '../../../../src/numerics/at.ts';
import { ask } from '../../../../src/reports/ask.ts';
import { disagreementWords } from '../../../../src/reports/disagreement-words.ts';
import { isDraft } from '../../../../src/reports/refuse-contradiction.ts';
import { inUnits, type Session } from '../../../../src/reports/session.ts';
import { openSetup } from '../../../../src/setup/open.ts';
import { marksFor } from '../../../../src/sight/marks.ts';
import { measured } from '../../calibration/invented-days.ts';
import { yards } from '../../sight/invented-rig.ts';

const RANGES = [30, 40, 50, 60, 80];
/** A strip on a part that runs 1.49 times as far as the pin, of a bow just as it was measured, to a tenth of a millimetre. */
const GEARING = 1.49;
const LINES = marksFor(measured, RANGES.map(yards)).marks.map(({ travel }) =>
  Number((1000 * GEARING * travel).toFixed(1)),
);

interface Changed {
  readonly lines?: readonly number[];
  readonly ranges?: readonly number[];
  readonly tape?: string;
}

const fileOf = ({
  lines = LINES,
  ranges = RANGES,
  tape = '',
}: Changed): string => `bow: { peep_height: 4.6 in }
arrow: { diameter: 0.246 in, mass: 452 gr, drag_coefficient: 2.4 }
launch: { speed: 281 fps }
air: { temperature: 59 degF, pressure: 1013.25 hPa, humidity: 50 % }
sight: { peep_to_pin: 33 in, zero_range: 20 yd${tape} }
marks:
${ranges.map((range, i) => `  - { range: ${range} yd, on_tape: ${at(lines, i)} mm, arrows: 6 }`).join('\n')}
`;
const opened = (changed: Changed): Session => inUnits(openSetup(fileOf(changed), 'strip.yaml'), 'imperial');
const wordsOf = (changed: Changed): string => disagreementWords(opened(changed));
const withLine = (index: number, line: number): readonly number[] =>
  LINES.map((each, i) => (i === index ? line : each));

interface FitText {
  readonly text: string;
  readonly data: Record<string, unknown>;
}
async function fitOf(changed: Changed): Promise<FitText> {
  const { blocks, data } = await ask('fit', openSetup(fileOf(changed), 'strip.yaml'));
  const text = blocks.map((block) => ('text' in block ? block.text : '')).join('\n');
  return { text, data: { ...data } };
}

describe('pencil lines', () => {
  it('that agree contradict nothing, whatever the gearing', () => expect(opened({}).disagreement).toBeNull());

  it('that run back are named with the pair, the likely slip and the line that would fit', () => {
    const words = wordsOf({ lines: withLine(3, 72.5) });
    expect(at(LINES, 3)).toBe(27.5);
    expect(words).toContain(`The pencil line ${at(LINES, 4)} mm at 80 yd lies above 72.5 mm at 60 yd.`);
    expect(words).toContain('Digits swapped, for 27.5 mm?');
    expect(words).toContain('The pencil line of 60 yd is left out of the fit');
  });

  it('copied from another range are named as that, and the rest is fitted without them', () => {
    const session = opened({ lines: withLine(2, at(LINES, 1)) });
    expect(disagreementWords(session)).toContain('Is that the line of 40 yd?');
    expect(session.calibration.residuals).toHaveLength(RANGES.length - 1);
  });

  it('of a target in metres are named as that', () => {
    const [{ travel }] = [at(marksFor(measured, [60]).marks, 0)];
    expect(wordsOf({ lines: withLine(3, Number((1000 * GEARING * travel).toFixed(1))) })).toContain(
      'Was the target so many metres away, not yards?',
    );
  });

  it('contradict a gearing that was written and is not so, and tell what it is', () => {
    const session = opened({ tape: ', tape: { travel_ratio: 1 }' });
    expect(isDraft(session)).toBe(true);
    expect(disagreementWords(session)).toContain(
      'All marks fit if the strip runs 1.49 times the pin, where 1 was written',
    );
  });

  it('measured from the other side, or from another line, are told as such', () => {
    expect(wordsOf({ lines: LINES.map((line) => -line) })).toContain('the lines were measured the other way');
    const shifted = LINES.map((line) => line + 5);
    expect(wordsOf({ lines: shifted, tape: ', tape: { travel_ratio: 1.49 }' })).toMatch(
      /line of the zero range were (4\.9|5\.0|5\.1) mm nearer to the lines of longer ranges/,
    );
  });

  it('say the largest slip that would go unseen, in millimetres of the strip', async () => {
    const { text, data } = await fitOf({ ranges: [40, 60], lines: [at(LINES, 1), at(LINES, 3)] });
    expect(text).toMatch(/A slip of (any size in the pencil line of|up to [0-9.]+ mm at) [46]0 yd/);
    expect(data['unseen_slip']).toMatchObject({ numbers: null });
  });

  it('count as shot: the next group is not told to begin at 20 yd', async () => {
    const { text } = await fitOf({});
    expect(text).not.toContain('then at 30 yd');
    expect(text).toMatch(/Shoot next at (\d+) yd/);
    expect(text).not.toContain('reading at the zero range');
  });

  it('that contradict one another are not told to scatter, nor what would go unseen', async () => {
    const { text, data } = await fitOf({ tape: ', tape: { travel_ratio: 1 }' });
    expect(text).not.toContain('widened');
    expect(text).not.toContain('would not show with these marks');
    expect(data['unseen_slip']).toBeNull();
  });
});
