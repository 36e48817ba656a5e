import fc from 'fast-check';
import { flagOf } from '../../src/cli/commands/flag.ts';
import type { Option, Options } from '../../src/reports/asked/option.ts';
import { QUESTIONS, type QuestionName } from '../../src/reports/questions.ts';
import { CHARACTERS, ODD_NUMBERS, oddQuantity, oddText } from './odd-values.ts';

/** The questions with their options; every command line is made of them. */
export const questions = await Promise.all(
  Object.entries(QUESTIONS).map(async ([name, { question }]) => {
    const { options, sheet, setups } = await question();
    return { name: name as QuestionName, options: options as Options, hasSheet: sheet !== null, setups };
  }),
);

/** Setups that the command lines name, and what is no setup. */
export const SETUPS = {
  small: 'small.yaml',
  hunt: 'examples/mountain-hunt/setup.yaml',
  builds: 'examples/which-build/setup.yaml',
  places: 'examples/home-and-away/setup.yaml',
  evening: 'examples/tuning-evening/setup.yaml',
} as const;

const USUAL: Readonly<Record<string, readonly string[]>> = {
  range: [
    '20yd',
    '60 yd',
    '91 m',
    '0yd',
    '0.5yd',
    '1yd',
    '3 yd',
    '1e9yd',
    '1e308yd',
    '-5yd',
    '2999yd',
    '1e-9 yd',
    '500',
  ],
  step: ['5 yd', '0', '1e-6yd', '20', '1e9 yd', '-1yd', '0.01in', '40m'],
  ranges: [
    '20,40',
    '20yd,,40yd',
    ',',
    '60 yd, 70 m',
    '1e9yd',
    '0,0',
    '20;40',
    `${'20,'.repeat(300)}20`,
    '-1yd',
  ],
  heights: ['15 ft, 20 ft', '0ft', '-3 ft', '1e6 ft', '300 ft', '1e-9ft', ',,'],
  angle: [
    '0deg',
    '1deg',
    '45 deg',
    '89.999deg',
    '90deg',
    '-90deg',
    '180deg',
    '1e9deg',
    '5 moa',
    '1e-9 deg',
    '75deg',
  ],
  speed: ['0 mph', '10 mph', '-10mph', '500mph', '1e308mph', '2fps', '1e-9 fps', '300 fps', '3'],
  mass: ['0 gr', '5gr', '-1 gr', '1000gr', '1e-9gr', '1kg'],
  length: ['0in', '1in', '-1in', '1e9in', '3 m', '1e-9 in', '30 in', '4.75'],
  diameter: ['8 in', '0in', '-1in', '1e9 in', '122cm'],
  altitude: ['0 ft', '-1500ft', '18000 ft', '1e6 ft', '3000 m', '29029'],
  temperature: ['70', '0 K', '-40', '120 degF', '-300 degF', '1e9 degC', '500 K'],
  pressure: ['29.92 inHg', '0 hPa', '-1 hPa', '1 Pa', '2000 hPa', '1e9inHg', '800'],
  share: ['50', '50%', '0.5', '101%', '-1%', '1e9', '0', '100%'],
  name: ['all', 'Home', 'home', 'nowhere', '', 'mass', 'drop', '__proto__', 'toString', '0', '*'],
  names: ['mass', 'drop,energy', 'nothing', '', ',', 'mass,mass', 'spin,spin_per_metre', 'a'.repeat(500)],
  'key=values': [
    'arrow.mass=400gr:500gr:50gr',
    'arrow.mass=400gr,450gr',
    'arrow.mass=1:2:3:4',
    'arrow.mass=',
    '=400gr',
    'arrow.mass',
    'arrow.mass=500gr:400gr:10gr',
    'arrow.mass=400gr:500gr:0gr',
    'arrow.mass=400gr:500gr:-10gr',
    'arrow.mass=400gr:500gr:1e-9gr',
    'bow.peep_height=1in,10in',
    'launch.speed=60fps,500fps',
    'launch.speed=rated,unknown',
    'air.temperature=-40degF,120degF',
    'nothing.here=1,2',
    'arrow=1,2',
    'marks.0.range=20yd,60yd',
    'marks.99.range=20yd,60yd',
    'title=a,b',
    '__proto__.x=1,2',
    'arrow.mass=1e999gr,NaN',
    'sight.peep_to_pin=10in,60in',
    'arrow.drag_coefficient=0.1,10',
    'arrow.parts.vanes.angle=1deg:5deg:1deg',
  ],
  tear: [
    '0.75 in left',
    '0.75 in',
    'left',
    '3 in high',
    '1e9in left',
    '-1in left',
    '0in left',
    '1 in left high',
  ],
  count: ['0', '1', '12', '60', '1e3', '1.5', '-1', '1e99', 'NaN', '', '0x10', '100000000'],
  number: ['0', '9007199254740991', '9007199254740992', '-0', '1e400', '١٢'],
  distance: ['6 ft', '0ft', '-1 ft', '1e9ft', '100 yd'],
  file: ['old.csv', 'nothing.csv', 'small.yaml', '', '-', '\u0000'],
};
/** Few enough to be shot in a moment, or too many to be asked for. */
const ARROWS = ['0', '24', '30', '23', '1e9', '100001', '-5', ''];

/** What may be typed for an option. */
export const typedValue = (name: string, option: Option): fc.Arbitrary<string> => {
  const of = 'of' in option ? option.of : '';
  if (name === 'arrows' || name === 'group') return fc.constantFrom(...ARROWS, ...ODD_NUMBERS.slice(0, 30));
  const choices = 'choices' in option ? option.choices : [];
  const usual = [...(USUAL[of] ?? []), ...choices];
  const known = usual.length === 0 ? oddText : fc.constantFrom(...usual);
  return fc.oneof(
    { weight: 8, arbitrary: known },
    { weight: 2, arbitrary: oddQuantity },
    { weight: 1, arbitrary: oddText.map((text) => text.slice(0, 20_000)) },
  );
};

/** One option as it is typed, with its value in one of the ways or without it. */
const typedOption = (name: string, option: Option): fc.Arbitrary<readonly string[]> => {
  const flag = flagOf(name);
  if (option.kind === 'flag') return fc.constantFrom([flag], [flag, flag], [`${flag}=yes`], [`--no-${name}`]);
  if (option.kind === 'subject') return typedValue(name, option).map((word) => [word]);
  return fc
    .tuple(
      fc.constantFrom('apart', 'apart', 'joined', 'joined', 'joined', 'bare', 'twice'),
      typedValue(name, option),
    )
    .map(([how, value]) => {
      if (how === 'apart') return [flag, value];
      if (how === 'bare') return [flag];
      return how === 'joined' ? [`${flag}=${value}`] : [`${flag}=${value}`, flag, value];
    });
};

const SHARED = [
  ['--units', 'metric'],
  ['--units', 'si'],
  ['--units', 'parsec'],
  ['--units='],
  ['--json'],
  ['--csv'],
  ['--json', '--csv'],
  ['--all'],
  ['--uncalibrated'],
  ['--out', 'x.svg'],
  ['--out', 'x.gif'],
  ['--out', ''],
  ['--out'],
  ['--'],
  ['--nothing'],
  ['-x'],
  ['-'],
  ['--help'],
  ['extra'],
  ['--from'],
] as const;

/** What makes a run short, where the defaults would fly an hour of arrows for nothing. */
const BRIEF: Partial<Record<QuestionName, readonly string[]>> = {
  scatter: ['--arrows=24', '--every=40yd'],
  compare: ['--arrows=0', '--every=30yd'],
  card: ['--out=x.svg', '--every=20yd'],
  vary: ['--over=arrow.mass=400gr,450gr'],
};

/** A command line of one question with a few of its options. */
const questionLine = ({
  name,
  options,
  setups,
}: (typeof questions)[number]): fc.Arbitrary<readonly string[]> => {
  const every = Object.entries(options);
  const some =
    every.length === 0
      ? fc.constant([])
      : fc.array(
          fc.constantFrom(...every).chain(([option, asked]) => typedOption(option, asked)),
          { minLength: 1, maxLength: 3 },
        );
  const file = fc.constantFrom(...Object.values(SETUPS), SETUPS.small, SETUPS.small, SETUPS.small);
  return fc
    .record({
      file,
      other: fc.oneof(
        { weight: setups === 'several' ? 1 : 40, arbitrary: fc.constant(null) },
        { weight: 1, arbitrary: file },
      ),
      some,
      shared: fc.array(fc.constantFrom(...SHARED), { maxLength: 1 }),
      isBrief: fc.nat(19),
    })
    .map(({ file: setup, other, some: own, shared, isBrief }) => [
      name,
      setup,
      ...(other === null ? [] : [other]),
      ...(isBrief === 0 ? [] : (BRIEF[name] ?? [])),
      ...own.flat(),
      ...shared.flat(),
    ]);
};

/** Words that make no command of the program. */
const stray = fc.array(
  fc.oneof(oddText, fc.constantFrom(...CHARACTERS, '--version', '--help', 'marks', 'new', 'add')),
  {
    maxLength: 4,
  },
);
/** What was shot, in words, for the command that writes it into the file. */
const SHOT = [
  '60',
  'yd',
  '60yd',
  '31.9',
  '6',
  'arrows',
  '5 in',
  'left',
  'low',
  'high',
  '279 fps',
  '2026-11-26',
  'note',
  'x',
];
const addLine = fc
  .array(fc.oneof({ weight: 3, arbitrary: fc.constantFrom(...SHOT) }, { weight: 1, arbitrary: oddText }), {
    maxLength: 8,
  })
  .map((words) => ['add', SETUPS.small, ...words]);
const newLine = fc
  .array(
    fc.oneof(
      fc.constantFrom('--force', '--metric', '--template', 'a.yaml', '-', '--units', 'si', ''),
      oddText,
    ),
    {
      maxLength: 3,
    },
  )
  .map((words) => ['new', ...words]);

/** A command line, sound or not. */
export const commandLine: fc.Arbitrary<readonly string[]> = fc.oneof(
  { weight: 16, arbitrary: fc.constantFrom(...questions).chain(questionLine) },
  { weight: 1, arbitrary: stray },
  { weight: 1, arbitrary: addLine },
  { weight: 1, arbitrary: newLine },
);
