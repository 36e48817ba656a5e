import { spawnSync } from 'node:child_process';
import {
  cpSync,
  existsSync,
  mkdirSync,
  mkdtempSync,
  readFileSync,
  realpathSync,
  rmSync,
  symlinkSync,
} from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, describe, expect, inject, it } from 'vitest';
import { at } from '../../src/numerics/at.ts';
import { utcDay } from '../../src/quantities/calendar-day.ts';
import { atTerminal } from './terminal.ts';

const program = join(inject('dist'), 'main.js');
const root = realpathSync(mkdtempSync(join(tmpdir(), 'quillpath-')));
afterAll(() => rmSync(root, { recursive: true }));
const blanks = join(root, 'bows of été 2026');
mkdirSync(blanks);
cpSync('examples', join(blanks, 'examples'), { recursive: true });
symlinkSync(blanks, join(root, 'link'));

/** A folder to work in, and what stands before the names of files there. */
const PLACES = [
  { called: 'here', at: '.', before: '' },
  { called: 'in a folder with blanks', at: blanks, before: '' },
  { called: 'by its whole path', at: '/', before: `${blanks}/` },
  { called: 'through a link', at: root, before: 'link/' },
] as const;
/**
 * A decimal comma, a dotless i, digits of another script. A system that lacks one of them falls back; the program must not
 * look.
 */
const LANGUAGES = ['C', 'de_DE.UTF-8', 'tr_TR.UTF-8', 'ar_EG.UTF-8'] as const;
/** 14 hours ahead, 5 3/4 ahead, 7 or 8 behind. */
const ZONES = ['UTC', 'Pacific/Kiritimati', 'Asia/Kathmandu', 'America/Los_Angeles'] as const;
const DAY = '2024-02-29';
/** Noon of that day at Greenwich, as `date -u -d '2024-02-29 12:00' +%s` prints it: what `--date` means in a PDF. */
const NOON = '1709208000';
const FOUR = [0, 1, 2, 3] as const;

/** Sixteen environments in which every two of language, zone, folder, number of cores and source of the date meet. */
const ENVIRONMENTS = FOUR.flatMap((language) =>
  FOUR.map((zone) => ({
    language: LANGUAGES[language],
    zone: ZONES[zone],
    // Exclusive or makes a Latin square: every folder once with every language, and once with every zone.
    place: at(PLACES, language ^ zone),
    oneCore: ((language & 1) ^ (zone >> 1)) === 1,
    byEnvironment: ((language >> 1) ^ (zone & 1)) === 1,
  })),
);
type Environment = (typeof ENVIRONMENTS)[number];

const HUNT = 'examples/mountain-hunt/setup.yaml';
const COURSE = 'examples/field-course/setup.yaml';
const AWAY = 'examples/home-and-away/setup.yaml';
const BUILDS = 'examples/which-build/setup.yaml';
const EVENING = [
  'examples/tuning-evening/setup.yaml',
  '--log',
  'examples/tuning-evening/evening.yaml',
] as const;

/** Every command, and every form of an answer; what takes long is asked for less. */
const COMMANDS: readonly (readonly [string, ...string[]])[] = [
  ['marks', COURSE, '--all', '--units', 'metric'],
  ['check', HUNT, '--json'],
  ['fly', AWAY, '--csv', '--every', '20yd'],
  ['fit', HUNT, '--out', 'paper.pdf'],
  ['tape', HUNT, '--out', 'paper.pdf'],
  ['tape', AWAY, '--place', 'high camp', '--out', 'paper.svg'],
  ['card', COURSE, '--out', 'paper.pdf'],
  ['card', HUNT, '--pocket', '--out', 'paper.svg'],
  ['cant', HUNT, '--json'],
  ['pins', HUNT, '--out', 'paper.pdf'],
  ['slope', COURSE, '--all'],
  ['misjudge', HUNT, '--csv'],
  ['wind', HUNT, '--json'],
  ['swing', HUNT, '--all'],
  ['broadhead', HUNT],
  ['scatter', HUNT, '--arrows', '24', '--json'],
  ['compare', BUILDS, '--arrows', '24', '--json'],
  ['compare', BUILDS, '--arrows', '0', '--out', 'paper.svg'],
  ['vary', BUILDS, '--over', 'arrow.mass=440gr:460gr:20gr', '--csv'],
  ['tune', ...EVENING, '--all'],
  ['tune', ...EVENING, '--out', 'paper.svg'],
  ['new', 'paper.yaml', '--template'],
];
const DATED = ['tape', 'card', 'fit', 'pins', 'compare', 'tune'];
const isFile = (word: string): boolean => /\.(yaml|pdf|svg)$/.test(word);
const paperOf = (argv: readonly string[]): string | undefined =>
  argv.find((word) => word.startsWith('paper.'));

/** The bytes that a command line gives in this process, on one thread: its document, or else its answer. */
async function here(argv: readonly [string, ...string[]]): Promise<Buffer> {
  const { out, err, code, files } = await atTerminal(
    DATED.includes(argv[0]) ? [...argv, '--date', DAY] : argv,
  );
  if (code !== 0) throw new Error(err);
  const paper = paperOf(argv);
  return Buffer.from(paper === undefined ? out : (files.get(paper) ?? ''));
}

let count = 0;
/** The same in a process of its own, as somebody elsewhere runs it. */
function elsewhere(argv: readonly [string, ...string[]], environment: Environment): Buffer {
  const { language, zone, place, oneCore, byEnvironment } = environment;
  count += 1;
  const paper = paperOf(argv);
  const written = join(root, `${count}-${paper}`);
  const words = argv.map((word) => {
    if (word === paper) return written;
    return isFile(word) ? place.before + word : word;
  });
  const dated = DATED.includes(argv[0]) && !byEnvironment ? ['--date', DAY] : [];
  const line = [process.execPath, program, ...words, ...dated];
  const [first = '', ...rest] =
    oneCore && existsSync('/usr/bin/taskset') ? ['taskset', '-c', '0', ...line] : line;
  const { stdout, stderr, status } = spawnSync(first, rest, {
    cwd: place.at,
    env: {
      PATH: process.env['PATH'],
      LANG: language,
      LC_ALL: language,
      TZ: zone,
      ...(byEnvironment ? { SOURCE_DATE_EPOCH: NOON } : {}),
    },
  });
  if (status !== 0) throw new Error(`${words.join(' ')}: ${stderr}`);
  return paper === undefined ? stdout : readFileSync(written);
}

const named = ({ language, zone, place, oneCore, byEnvironment }: Environment): string =>
  [
    language,
    zone,
    place.called,
    ...(oneCore ? ['one core'] : []),
    ...(byEnvironment ? ['dated by the environment'] : []),
  ].join(', ');

/** One environment a command; `EVERY=yes` tries each command in each, which takes a quarter of an hour. */
const isInEvery = process.env['EVERY'] === 'yes';
const CASES = COMMANDS.flatMap((argv, i) =>
  ENVIRONMENTS.filter((_, j) => isInEvery || j === (5 * i) % ENVIRONMENTS.length).map(
    (environment) => [argv.join(' '), named(environment), argv, environment] as const,
  ),
);

describe('the same bytes', () => {
  it('in environments of which every one is tried', () =>
    expect(new Set(CASES.map(([, , , environment]) => environment)).size).toBe(ENVIRONMENTS.length));

  it.each(CASES)('%s: %s', async (_, __, argv, environment) => {
    const [one, other] = [await here(argv), elsewhere(argv, environment)];
    expect(one.length).toBeGreaterThan(200 /* bytes: more than a sentence */);
    if (paperOf(argv)?.endsWith('.svg') === true) expect(one.toString()).toContain(DAY);
    // Compared as text, a difference is shown.
    if (!one.equals(other)) expect(other.toString('latin1')).toBe(one.toString('latin1'));
  });
});

/*
 * IANA time zone database: Pacific/Kiritimati is 14 h ahead of Greenwich since 1995, Etc/GMT+12 is 12 h behind it (its signs are
 * those of POSIX). They never have the same day.
 */
it.each([
  ['Pacific/Kiritimati', 14],
  ['Etc/GMT+12', -12],
])('the date on paper is the archer’s own in %s', (TZ, ahead) => {
  const dayThere = (): string => utcDay(new Date(Date.now() + ahead * 3_600_000));
  const written = join(root, `own${ahead}.svg`);
  const before = dayThere();
  const { status } = spawnSync(process.execPath, [program, 'fit', HUNT, '--out', written], {
    env: { PATH: process.env['PATH'], TZ },
  });
  expect(status).toBe(0);
  const printed = /\d{4}-\d{2}-\d{2}/.exec(readFileSync(written, 'utf8'))?.[0];
  // Midnight may pass while it runs.
  expect([before, dayThere()]).toContain(printed);
});
