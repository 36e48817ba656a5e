import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { ask } from '../../../../src/reports/ask.ts';
import { PLACE_OPTIONS } from '../../../../src/reports/asked/place-options.ts';
import { QUESTIONS } from '../../../../src/reports/questions.ts';
import type { Report } from '../../../../src/reports/report.ts';
import { openSetup } from '../../../../src/setup/open.ts';

const text = `${readFileSync('examples/which-build/setup.yaml', 'utf8')}
places:
  - { name: high camp, altitude: 9800 ft, temperature: 25 degF }
`;
const setup = openSetup(text, 'stand.yaml');
const headOf = ({ blocks }: Report): string =>
  blocks.flatMap((block) => (block.kind === 'head' ? block.lines : [])).join('\n');

/** Those whose numbers hang on the air, and answer within a second. */
const PREDICTING = ['fly', 'marks', 'slope', 'misjudge', 'wind', 'swing', 'broadhead', 'cant'] as const;

describe.each(PREDICTING)('%s', (name) => {
  it('says for which air it holds, in its head and in its document', async () => {
    const there = await ask(name, setup, { place: 'High camp' });
    expect(headOf(there)).toContain('at high camp: 25 °F');
    expect(there.data).toMatchObject({
      place: { name: 'high camp', temperature_K: 269.2611111111111 },
      build: null,
    });
    const here = await ask(name, setup);
    expect(here.data).toMatchObject({
      place: { name: null, pressure_Pa: setup.calibration.rig.conditions.air.pressure },
    });
  });

  it('answers for a build, and names it', async () => {
    const built = await ask(name, setup, { build: 'slim shaft' });
    expect(built.data).toMatchObject({
      build: 'slim shaft',
      title: 'Whitetail stand, 421 grain build, slim shaft',
    });
    expect(headOf(built)).toContain("the speed of this one is from the bow's energy");
  });
});

it.each(['check', 'fit', 'vary'] as const)('%s explains the file, and takes no place', async (name) => {
  const { options } = await QUESTIONS[name].question();
  expect(Object.keys(options)).not.toContain('place');
});

it('compare takes a place, and no build: it is about all of them', async () => {
  const { options } = await QUESTIONS.compare.question();
  expect(Object.keys(options)).toEqual(expect.arrayContaining(Object.keys(PLACE_OPTIONS)));
  expect(Object.keys(options)).not.toContain('build');
});

it('wind prints the command for a tape of the camp that is farthest off, and the command answers', async () => {
  const { blocks } = await ask('wind', setup, { from: '60 yd' });
  const told = blocks
    .flatMap((block) => (block.kind === 'paragraph' ? [block.text] : []))
    .find((line) => line.includes('quillpath tape'));
  expect(told).toContain('quillpath tape stand.yaml --altitude "9000 ft" --out camp.pdf');
  const tape = await ask('tape', setup, { altitude: '9000 ft' });
  // By hand, 2742 geopotential metres: 270.327 K, 724.4 hPa, so 0.9335 kg/m3.
  expect(tape.data).toMatchObject({ place: { name: null, density_kgpm3: expect.closeTo(0.9335, 3) } });
});

it('a bare altitude takes the unit of --units, as other options do', async () => {
  const airIn = async (units: 'imperial' | 'metric') =>
    (await ask('marks', setup, { to: '30', altitude: '3000' }, { units })).data;
  // U.S. Standard Atmosphere 1976 at 3000 m: 701.21 hPa; at 3000 ft, 914.4 m: 908.1 hPa.
  expect(await airIn('metric')).toMatchObject({ place: { pressure_Pa: expect.closeTo(70121, -1) } });
  expect(await airIn('imperial')).toMatchObject({ place: { pressure_Pa: expect.closeTo(90812, -1) } });
});
