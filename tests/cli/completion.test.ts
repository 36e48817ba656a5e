import { spawnSync } from 'node:child_process';
import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { atTerminal } from './terminal.ts';

const SHELLS = ['bash', 'zsh', 'fish'] as const;
type Shell = (typeof SHELLS)[number];

const isHere = (shell: Shell): boolean => spawnSync(shell, ['-c', 'true']).status === 0;
const folder = mkdtempSync(join(tmpdir(), 'quillpath completion '));
const fileOf = (shell: Shell): string => join(folder, `quillpath.${shell}`);

/** Every command and its options, as the help tells them to a person. */
async function helpWords(): Promise<ReadonlyMap<string, readonly string[]>> {
  const { out } = await atTerminal(['--help']);
  const names = [...out.slice(out.indexOf('\nCommands:')).matchAll(/^ {2}(\w+) /gm)].map(
    ([, name]) => `${name}`,
  );
  const entries = names
    .filter((name) => name !== 'help')
    .map(async (name) => {
      const { out: help } = await atTerminal([name, '--help']);
      return [
        name,
        [...help.matchAll(/^ {2}(?:-\w, )?(--[\w-]+)/gm)].map(([, option]) => `${option}`),
      ] as const;
    });
  return new Map(await Promise.all(entries));
}

beforeAll(async () => {
  writeFileSync(join(folder, 'my bow.yaml'), '');
  for (const shell of SHELLS) writeFileSync(fileOf(shell), (await atTerminal(['completion', shell])).out);
});
afterAll(() => rmSync(folder, { recursive: true }));

const sorted = (words: Iterable<string>): readonly string[] => [...new Set(words)].toSorted();

/** What bash is told after these words, the last of them unfinished; null where it is left to complete the names of files. */
function bashOffers(...words: readonly string[]): readonly string[] | null {
  // A stand-in for the builtin, which works only while a person types, notes that names of files are not wanted.
  const script = `compopt() { echo "compopt $*"; }
    source "$1"; shift; COMP_WORDS=(quillpath "$@"); COMP_CWORD=$#; _quillpath; printf '%s\\n' "\${COMPREPLY[@]}"`;
  const { stdout, stderr, status } = spawnSync(
    'bash',
    ['--norc', '-c', script, 'bash', fileOf('bash'), ...words],
    { encoding: 'utf8' },
  );
  expect(stderr).toBe('');
  expect(status).toBe(0);
  const lines = stdout.split('\n').filter((line) => line !== '');
  if (lines.length === 0) return null;
  return lines.filter((line) => line !== 'compopt +o default');
}

describe('bash', () => {
  it('completes every command, and every option of each', async () => {
    const words = await helpWords();
    expect(words.size).toBeGreaterThan(19);
    expect(sorted(bashOffers('') ?? [])).toEqual(sorted([...words.keys(), 'help', '--version', '--help']));
    for (const [name, options] of words) expect(sorted(bashOffers(name, '-') ?? [])).toEqual(sorted(options));
  });
  it('completes the beginning of a word', () => {
    expect(bashOffers('mar')).toEqual(['marks']);
    expect(bashOffers('marks', '--uni')).toEqual(['--units']);
    expect(bashOffers('xyz', '')).toEqual(null);
  });
  it('completes the words an option may take, after a blank and after =', () => {
    expect(bashOffers('tape', '--page', '')).toEqual(['a4', 'letter']);
    expect(bashOffers('tape', 'x.yaml', '--page', 'l')).toEqual(['letter']);
    expect(bashOffers('tape', '--page', '=')).toEqual(['a4', 'letter']);
    expect(bashOffers('tape', '--page', '=', 'le')).toEqual(['letter']);
  });
  it('leaves the names of files to bash, and numbers to the archer', () => {
    expect(bashOffers('marks', '')).toBe(null);
    expect(bashOffers('tape', 'x.yaml', '--out', '')).toBe(null);
    expect(bashOffers('compare', 'x.yaml', 'y.yaml', '')).toBe(null);
    expect(bashOffers('tape', '--from', '')).toEqual([]);
    expect(bashOffers('add', 'x.yaml', '')).toEqual([]);
  });
  it('knows which word comes next, values of options left out', () => {
    expect(bashOffers('tune', '--page', 'a4', '')).toBe(null);
    for (const before of [['x.yaml'], ['--page', 'a4', 'x.yaml'], ['--page', '=', 'a4', 'x.yaml', '--json']])
      expect(bashOffers('tune', ...before, 'b')).toEqual(['bare']);
    expect(bashOffers('completion', '')).toEqual([...SHELLS]);
    expect(bashOffers('help', 'w')).toEqual(['wind']);
    // Nothing but options can follow.
    expect(bashOffers('marks', 'x.yaml', '')).toContain('--from');
  });
});

/** What fish offers after this line, without its descriptions. */
function fishOffers(line: string): readonly string[] {
  const { stdout, stderr } = spawnSync(
    'fish',
    [
      '--no-config',
      '-c',
      'source $argv[1]; cd (dirname $argv[1]); complete -C $argv[2]',
      fileOf('fish'),
      line,
    ],
    { encoding: 'utf8' },
  );
  expect(stderr).toBe('');
  return stdout.split('\n').flatMap((found) => (found === '' ? [] : [found.replace(/\t.*/, '')]));
}

describe.skipIf(!isHere('fish'))('fish, where there is one', () => {
  it('completes every command, and every option of each', async () => {
    const words = await helpWords();
    expect(sorted(fishOffers('quillpath '))).toEqual(sorted([...words.keys(), 'help']));
    for (const [name, options] of words)
      expect(sorted(fishOffers(`quillpath ${name} --`))).toEqual(sorted(options));
  });
  it('completes words, files and steps where they belong', () => {
    expect(fishOffers('quillpath tape --page ')).toEqual(['a4', 'letter']);
    expect(fishOffers('quillpath tape --page=')).toEqual(['--page=a4', '--page=letter']);
    expect(fishOffers('quillpath tape --from ')).toEqual([]);
    expect(fishOffers('quillpath marks my')).toEqual(['my bow.yaml']);
    expect(fishOffers('quillpath tape --out my')).toEqual(['my bow.yaml']);
    expect(fishOffers('quillpath compare a.yaml b.yaml my')).toEqual(['my bow.yaml']);
    expect(fishOffers('quillpath tune --page a4 x.yaml b')).toEqual(['bare']);
    expect(fishOffers('quillpath tune x.yaml marks --js')).toEqual(['--json']);
    expect(fishOffers('quillpath tune ')).not.toContain('bare');
  });
});

describe.skipIf(!isHere('zsh'))('zsh, where there is one', () => {
  it('can read the script', () => {
    const { stderr, status } = spawnSync('zsh', ['-n', fileOf('zsh')], { encoding: 'utf8' });
    expect(stderr).toBe('');
    expect(status).toBe(0);
  });
});

describe('every shell', () => {
  it.each(SHELLS)('%s is told every command, and every option of each', async (shell) => {
    const { out } = await atTerminal(['completion', shell]);
    const words = await helpWords();
    for (const [name, options] of words) {
      expect(out).toMatch(new RegExp(String.raw`\b${name}\b`));
      for (const option of options)
        expect(out).toContain(shell === 'fish' ? `-l ${option.slice(2)}` : option);
    }
  });
  it('another is refused, with the ones there are', async () => {
    const { code, err } = await atTerminal(['completion', 'tcsh']);
    expect(code).toBe(2);
    expect(err).toMatch(/bash, zsh, fish/);
  });
});
