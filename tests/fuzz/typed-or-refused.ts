import { readFileSync } from 'node:fs';
import process from 'node:process';
import type { Io } from '../../src/cli/io.ts';
import { run } from '../../src/cli/run.ts';
import { typeface } from '../cli/typeface.ts';
import { SMALLEST } from '../unit/setup/example-text.ts';
import { around, screen } from './asked-or-refused.ts';
import { SETUPS } from './command-lines.ts';
import { Astray, GIVEN } from './read-or-refused.ts';

/** What a command line may take of the processor, s, before there is an answer or a sentence. */
const LONGEST_RUN = 10;
/** Characters of what a person is told of a slip, and of a whole answer. */
const LONGEST_REFUSAL = 1500;
const LONGEST_ANSWER = 3_000_000;

const FILES: Readonly<Record<string, string>> = {
  [SETUPS.small]: SMALLEST,
  ...Object.fromEntries(
    Object.values(SETUPS)
      .filter((name) => name !== SETUPS.small)
      .map((name) => [name, readFileSync(name, 'utf8')]),
  ),
  'old.csv': 'range (yd),tape (mm)\r\n20,0\r\n40,7.1\r\n60,17.2\r\n',
};

/** What programs say that have lost their way. */
const ASTRAY = /\bundefined\b|\[object |\bNaN\b|\bInfinity\b/;
/** More digits than anybody measures, an angle in radians, the words of the core: fit for a program and not for an archer. */
const RAW = /\d\.\d{6,}|\d{17,}|\(rad\)|allowed: /;

interface Told {
  out: string;
  err: string;
}

/**
 * Runs one command line in process, with files that are only imagined.
 *
 * @returns the exit code
 * @throws Astray for an answer or a refusal that is none
 */
export async function typedOrRefused(argv: readonly string[]): Promise<number> {
  const told: Told = { out: '', err: '' };
  const before = process.cpuUsage();
  const code = await run(argv, world(told));
  const { user, system } = process.cpuUsage(before);
  const says = (wrong: string): Astray =>
    new Astray(`${wrong}, exit code ${code}, out ${told.out.length}: ${told.err.slice(0, 1500)}`);
  if (user + system > 1e6 * LONGEST_RUN) throw says(`it took ${((user + system) / 1e6).toFixed(1)} s`);
  const wrong = wrongWith(argv, code, told);
  if (wrong !== null) throw says(wrong);
  return code;
}

const world = (told: Told): Io => ({
  ...screen(told),
  readText: (path) => {
    const text = FILES[path];
    if (text === undefined) throw Object.assign(new Error('no such file'), { code: 'ENOENT' });
    return text;
  },
  fonts: typeface,
  exists: (path) => path in FILES,
});

function wrongWith(argv: readonly string[], code: number, { out, err }: Told): string | null {
  if (![0, 1, 2].includes(code)) return 'an exit code that is none';
  if (out.length > LONGEST_ANSWER) return 'an answer without an end';
  const given = argv.join(' ');
  const astray = ASTRAY.exec(out + err);
  if (astray !== null && !GIVEN.test(given)) return `words of a program, ${around(out + err, astray.index)}`;
  if (code === 0) return err === '' ? null : 'a complaint about what was done';
  if (err.trim() === '') return 'no reason';
  if (/^"?Unexpected/.test(err) || err.includes('"unexpected"')) return 'a crash';
  // What a command line without a command is told is what there is, and that is long.
  if (argv.includes('--json') || /^Usage: /m.test(err)) return null;
  if (err.length > LONGEST_REFUSAL) return 'a refusal without an end';
  if (RAW.test(err) && !RAW.test(given)) return 'raw numbers';
  if (code === 2 && !namesWhatIsWrong(argv, err)) return 'no option named';
  return null;
}

/** Words that name what is wrong in another way; what the file lacks for a question is named by its key. */
const NAMED = [
  'no such file',
  'cannot be understood',
  'arrow.parts',
  'missing required argument',
  "required option '--",
  'too many arguments',
  'unknown command',
  'unknown option',
  'standard input',
  'Usage: ',
];

/** A refusal names an option that was typed, or the word or the file that it is about. */
const namesWhatIsWrong = (argv: readonly string[], err: string): boolean => {
  const flags = argv.flatMap((word) => /^--?[\w-]+/.exec(word)?.[0] ?? []);
  const words = argv.filter((word) => !word.startsWith('--') && word !== '').slice(1);
  return (
    flags.some((flag) => err.includes(flag)) ||
    words.some((word) => err.includes(word.trim().slice(0, 20).trim())) ||
    // A problem of a file has its place; an option that was left out has a value too.
    /^\S+:\d+:\d+ |^--[a-z-]+: /m.test(err) ||
    NAMED.some((words) => err.includes(words))
  );
};
