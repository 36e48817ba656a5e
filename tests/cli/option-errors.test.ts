import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { atTerminal } from './terminal.ts';

const example = 'examples/mountain-hunt/setup.yaml';
const builds = 'examples/which-build/setup.yaml';
/** A number with more digits than anybody measures, a calculation that went astray, and a unit in brackets: what programs say. */
const RAW = /\d\.\d{5,}|NaN|Infinity|\(rad\)|allowed:/;

describe('a range that is too near is named by its option, in the units of the answer', () => {
  it.each([
    ['marks', []],
    ['fit', []],
    ['cant', []],
    ['slope', []],
    ['misjudge', []],
    ['wind', []],
    ['tape', []],
    ['card', ['--out', 'card.svg']],
    ['scatter', ['--arrows', '24', '--every', '20yd']],
  ])('%s', async (name, more) => {
    const line = [name, example, '--from', '1yd', '--to', '41yd', ...more];
    const { code, out, err, files } = await atTerminal(line);
    expect(err).toMatch(
      /^--from: 1 ?yd is too near, as the arrow leaves the bow 1\.\d\d yd from the eye\. Write --from "5 yd"/,
    );
    expect(err).not.toMatch(RAW);
    expect([code, out, files.size]).toEqual([2, '', 0]);
    const metric = await atTerminal([...line, '--units', 'metric']);
    expect(metric.err).toMatch(/leaves the bow 0\.\d\d m from the eye/);
  });
  it('compare, whose nearest range is not written', async () => {
    const { err } = await atTerminal([
      'compare',
      builds,
      '--from',
      '0.5yd',
      '--every',
      '10yd',
      '--arrows',
      '0',
    ]);
    expect(err).toMatch(/^--from: 0\.5 ?yd is too near/);
  });
  it('vary, where it is one of several', async () => {
    const { out, err } = await atTerminal([
      'vary',
      example,
      '--over',
      'arrow.mass=440gr,460gr',
      '--at',
      '0.5yd,60yd',
    ]);
    expect(`${out}${err}`).not.toMatch(/NaN|Infinity/);
  });
});

describe('a value that cannot be computed is named by its option', () => {
  it.each([
    ['--aim', ['fly', example, '--aim', '0yd']],
    ['--aim', ['fly', example, '--aim', '0.5yd']],
    ['--aim', ['fly', example, '--aim=-5yd']],
    ['--aim', ['fly', example, '--aim', '1e9yd']],
    ['--angle', ['swing', example, '--angle', '90deg']],
    ['--angle', ['broadhead', example, '--angle', '90deg']],
    ['--nock-travel', ['swing', example, '--nock-travel', '1e9fps']],
    ['--third-axis', ['slope', example, '--third-axis', '89.999deg']],
    ['--steepest', ['slope', example, '--steepest', '90deg']],
    ['--steepest', ['card', example, '--steepest', '90deg', '--out', 'card.svg']],
    ['--most', ['cant', example, '--most', '90deg', '--step', '10deg']],
    ['--speed', ['wind', example, '--speed', '500mph']],
    ['--length', ['broadhead', example, '--length', '0in']],
    ['--thickness', ['broadhead', example, '--thickness=-1in']],
    ['--cutting-diameter', ['broadhead', example, '--cutting-diameter', '1e9in']],
    ['--every', ['broadhead', example, '--every', '1e9yd']],
    ['--plot', ['vary', example, '--over', 'arrow.mass=400gr,450gr', '--plot', 'nothing']],
    ['--log', ['tune', example, '--log', 'nothing.yaml']],
    ['--against', ['tape', example, '--against', 'nothing.csv']],
  ])('%s in %j', async (option, argv) => {
    const { code, err, out } = await atTerminal(argv);
    expect(err.startsWith(`${option}: `)).toBe(true);
    expect(err).not.toMatch(RAW);
    expect([code, out]).toEqual([2, '']);
  });
});

it.each([
  ['--log', ['tune', example, '--log=']],
  ['--cutting-diameter', ['broadhead', example, '--cutting-diameter', '1e-9in']],
  ['--to', ['fit', example, '--from', '590yd', '--to', '600yd']],
])('%s in %j is named where it is in the middle of the sentence', async (option, argv) => {
  const { code, err, out } = await atTerminal(argv);
  expect(err).toContain(option);
  expect(err).not.toMatch(RAW);
  expect(code).toBeGreaterThan(0);
  expect(out).toBe('');
});

describe('what to write instead is written as an archer would', () => {
  it.each([
    [['misjudge', example, '--ring', 'a paper plate'], 'Write --ring "1 in" or "2.54 cm".'],
    [['misjudge', example, '--ring', '8 in diameter'], 'Write --ring "8 in" or "20.3 cm".'],
    [['broadhead', example, '--length', 'long'], 'Write --length "1 in" or "2.54 cm".'],
    [['wind', example, '--speed', 'a breeze'], 'Write --speed "1 mph" or "0.447 m/s".'],
    [['misjudge', example, '--gusts', 'few'], 'Write --gusts "1 mph" or "0.447 m/s".'],
    [['vary', example, '--over', 'mass=400:500:50'], 'command line  mass: there is no key "mass" here.'],
    [['vary', example, '--over', 'point.mass=100,150'], 'command line  point: there is no key "point" here.'],
    [
      ['vary', example, '--over', 'foo.bar=1,2'],
      'Write the whole path of a key, such as arrow.parts.point.mass.',
    ],
    [['marks', example, '\u2014to', '60yd'], '\u2014to begins with a long dash. Write two hyphens: --to.'],
    [['marks', example, '\u2013-every=2yd'], 'begins with a long dash. Write two hyphens: --every.'],
    [
      ['marks', example, '--to=60', 'yd'],
      '(a value with a blank in it stands in quotation marks: --to "60 yd")',
    ],
    [['tape', example, '--out', ''], '--out names no file. Write --out tape.pdf or --out tape.svg.'],
    [['slope', example, '--stand', 'tree'], 'Write --stand "1 ft" or "0.305 m".'],
    [
      ['marks', example, '--temperature', 'cold'],
      'Write a value within the limits, such as --temperature "59 degF".',
    ],
    [['marks', example, '--pressure', '1013'], 'Write --pressure "1013 hPa".'],
    [
      ['slope', example, '--steepest', '5 deg'],
      '--angle-step: a step of 10 deg is larger than --steepest, 5 deg. ' +
        'Write a smaller --angle-step or a larger --steepest.',
    ],
    [
      ['slope', example, '--steepest', '0'],
      '--steepest: the largest angle must be greater than zero, and 0 deg is not.',
    ],
    [
      ['slope', example, '--angle-step=-1 deg'],
      '--angle-step: the step must be greater than zero, and -1 deg is not.',
    ],
    [['slope', example, '--angle-step', '0.1 deg'], '--angle-step: that would be 801 angles.'],
  ])('%j: %s', async (argv, words) => {
    const { code, err } = await atTerminal(argv);
    expect(err).toContain(words);
    expect(code).toBe(2);
  });
});

it('a word without an end is told of by its beginning', async () => {
  const { err } = await atTerminal(['marks', example, `--${'x'.repeat(5000)}`]);
  expect(err).toMatch(/^error: unknown option '--x{118}…'/);
  expect(err.length).toBeLessThan(400);
});

it('a tape whose arrow touches the sight before its first tick says so, as marks do', async () => {
  const text = readFileSync(example, 'utf8').replace(/housing_below_pin:.*/, 'housing_below_pin: 3 in');
  const { err, out, code } = await atTerminal(['tape', 's.yaml', '--from', '60yd'], { 's.yaml': text });
  expect(`${err}${out}`).toMatch(/^--from: .*the arrow touches the sight/);
  expect(err).not.toMatch(RAW);
  expect(code).toBe(2);
});
