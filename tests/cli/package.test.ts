import { execFileSync, spawnSync } from 'node:child_process';
import { existsSync, rmSync, writeFileSync } from 'node:fs';
import { afterAll, describe, expect, it } from 'vitest';

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
          'dist/quillpath.1',
          'dist/sbom.json',
          'src/documents/fonts/sans-condensed.ttf',
          ...tracked.filter((path) => /^examples\/.*\.(yaml|md)$/.test(path)),
        ]),
      );
    },
  );
});
