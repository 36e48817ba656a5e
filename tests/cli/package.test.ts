import { execFileSync, spawnSync } from 'node:child_process';
import { existsSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { afterAll, describe, expect, inject, it } from 'vitest';

const dist = inject('dist');
const STRAYS = ['my-bow.yaml', 'examples/my-bow.yaml', 'src/documents/fonts/my-bow.yaml', 'my-bow.pdf'];
afterAll(() => {
  for (const stray of STRAYS) rmSync(stray, { force: true });
});

describe('what would be published', () => {
  // A copy of the sources without their history cannot say what is kept.
  const listed = spawnSync('git', ['ls-files'], { encoding: 'utf8' });
  const tracked = listed.stdout?.split('\n') ?? [];
  const packed = (): readonly string[] => {
    const said = execFileSync('npm', ['pack', '--dry-run', '--json', '--ignore-scripts', '--offline'], {
      encoding: 'utf8',
      stdio: ['ignore', 'pipe', 'ignore'],
    });
    const [{ files }]: readonly [{ readonly files: readonly { readonly path: string }[] }] = JSON.parse(said);
    return files.map(({ path }) => path);
  };

  it.runIf(listed.status === 0)(
    'holds nothing but what is kept and what is built, whatever else lies there',
    () => {
      for (const stray of STRAYS) {
        expect(existsSync(stray)).toBe(false);
        writeFileSync(stray, 'bow: mine\n');
      }
      const files = packed();
      expect(files.filter((path) => !path.startsWith('dist/') && !tracked.includes(path))).toEqual([]);
      expect(files.filter((path) => /^(tests|reference|\.ci|guide)\//.test(path))).toEqual([]);
      // The code that the build keeps fits one version of Node on one kind of processor.
      expect(files.filter((path) => path.startsWith('dist/cli/'))).toEqual(['dist/cli/quillpath.js']);
      // What is offered is there, with the typeface, the licence texts and every example.
      expect(files).toEqual(
        expect.arrayContaining([
          'LICENSE',
          'README.md',
          'dist/NOTICES.txt',
          'dist/main.js',
          'dist/package.json',
          'dist/cli/quillpath.js',
          'dist/library/quillpath.js',
          'dist/library/package.json',
          'src/documents/fonts/sans-condensed.ttf',
          ...tracked.filter((path) => /^examples\/.*\.(yaml|md)$/.test(path)),
        ]),
      );
    },
  );
});

interface Locked {
  readonly dev?: boolean;
  readonly license?: string;
}

describe('licences', () => {
  /** What packages may have that are part of the program, and what those may have besides that only make and test it. */
  const ALLOWED = ['MIT', 'ISC', 'BSD-2-Clause', 'BSD-3-Clause', '0BSD', 'Apache-2.0'];
  const ALLOWED_FOR_TESTS = [...ALLOWED, 'MPL-2.0', 'MIT OR Apache-2.0'];
  const { packages }: { readonly packages: Readonly<Record<string, Locked>> } = JSON.parse(
    readFileSync('package-lock.json', 'utf8'),
  );
  const locked = Object.entries(packages).filter(([path]) => path !== '');

  it('of all packages are allowed', () => {
    const wrong = locked
      // Its package.json names none; its text is that of MIT, which the next test looks at.
      .filter(([path]) => !path.endsWith('/png-js'))
      .filter(
        ([, { dev, license }]) => !(dev === true ? ALLOWED_FOR_TESTS : ALLOWED).includes(license ?? ''),
      );
    expect(wrong.map(([path, { license }]) => `${path}: ${license}`)).toEqual([]);
    expect(locked.length).toBeGreaterThan(30);
  });
  it('png-js, which names none, has the text of MIT', () =>
    expect(readFileSync('node_modules/png-js/LICENSE', 'utf8')).toMatch(
      /MIT|Permission is hereby granted, free of charge/,
    ));
  it('of what is bundled stand in one file with their texts', () => {
    const notices = readFileSync(join(dist, 'NOTICES.txt'), 'utf8');
    const [, ...parts] = notices.split(/={80}\n(.*)\n={80}\n/);
    const titles = parts.filter((_, i) => i % 2 === 0);
    const texts = parts.filter((_, i) => i % 2 === 1);
    for (const name of [
      'commander',
      'mathjs',
      'odex',
      'pdfkit',
      'yaml',
      'zod',
      'fontkit',
      'png-js',
      'The typeface',
    ])
      expect(titles.some((title) => title.startsWith(name))).toBe(true);
    for (const [i, text] of texts.entries())
      expect(text, titles[i]).toMatch(/permission|permitted|licen[cs]e/i);
    // The shortest of these licences, ISC, has 700 characters.
    expect(Math.min(...texts.map(({ length }) => length))).toBeGreaterThan(500);
  });
});
