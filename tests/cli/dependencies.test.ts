import { existsSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, inject, it } from 'vitest';

const dist = inject('dist');

interface Locked {
  readonly version: string;
  readonly license?: string;
  readonly integrity?: string;
  readonly resolved?: string;
  readonly hasInstallScript?: boolean;
}
interface LockFile {
  readonly packages: Readonly<Record<string, Locked>>;
}
interface PackageFile {
  readonly version: string;
  readonly license?: string;
  readonly dependencies?: Readonly<Record<string, string>>;
  readonly devDependencies: Readonly<Record<string, string>>;
}
interface Bill {
  readonly metadata: { readonly component: { readonly name: string; readonly version: string } };
  readonly components: readonly {
    readonly name: string;
    readonly version: string;
    readonly licenses: readonly { readonly license: { readonly id?: string; readonly name?: string } }[];
  }[];
  readonly dependencies: readonly { readonly ref: string; readonly dependsOn: readonly string[] }[];
}

const lockedIn = (path: string): readonly (readonly [string, Locked])[] => {
  const { packages }: LockFile = JSON.parse(readFileSync(path, 'utf8'));
  return Object.entries(packages).filter(([folder]) => folder !== '');
};
const locked = lockedIn('package-lock.json');
const own: PackageFile = JSON.parse(readFileSync('package.json', 'utf8'));

/** What may be in the program: licences that ask for no more than their text. */
const ALLOWED = ['MIT', 'ISC', 'BSD-2-Clause', 'BSD-3-Clause', '0BSD', 'Apache-2.0'];
/** What may make and test it besides; nobody is given that. */
const ALLOWED_FOR_TESTS = [...ALLOWED, 'MPL-2.0', 'MIT OR Apache-2.0'];
/** What a tool may have that is fetched only when it is asked for: a permissive licence, and a table of browsers. */
const ALLOWED_BY_HAND = [...ALLOWED_FOR_TESTS, 'BlueOak-1.0.0', 'CC-BY-4.0'];

/** png-js names no licence in its package.json; its LICENSE is MIT, which a test below looks at. */
const licenceOf = (folder: string, { license }: Locked): string =>
  license ?? (folder.endsWith('node_modules/png-js') ? 'MIT' : 'none');

describe('every package', () => {
  it('is locked to one content, from whichever registry it comes', () => {
    expect(locked.length).toBeGreaterThan(100);
    for (const [folder, { version, integrity, resolved }] of locked) {
      expect(version, folder).toMatch(/^\d+\.\d+\.\d+/);
      expect(integrity, folder).toMatch(/^sha512-/);
      // An address would be one machine's registry, or a file or repository that nobody reviewed.
      expect(resolved, folder).toBeUndefined();
    }
  });
  it('has a licence that is allowed', () => {
    const wrong = locked.filter(([folder, each]) => !ALLOWED_FOR_TESTS.includes(licenceOf(folder, each)));
    expect(wrong.map(([folder, each]) => `${folder}: ${licenceOf(folder, each)}`)).toEqual([]);
  });
  it('is licensed as the lock file says, where it is installed', () => {
    const here = locked.filter(([folder]) => existsSync(join(folder, 'package.json')));
    expect(here.length).toBeGreaterThan(50);
    for (const [folder, { version, license }] of here) {
      const told: PackageFile = JSON.parse(readFileSync(join(folder, 'package.json'), 'utf8'));
      expect([told.version, told.license], folder).toEqual([version, license]);
    }
  });
  it('of the tools that are installed by hand has a licence that is allowed for those', () => {
    const apart = lockedIn('tests/mutation/package-lock.json');
    const wrong = apart.filter(([folder, each]) => !ALLOWED_BY_HAND.includes(licenceOf(folder, each)));
    expect(wrong.map(([folder, each]) => `${folder}: ${licenceOf(folder, each)}`)).toEqual([]);
  });
  it('of png-js, which names no licence, has the text of MIT', () =>
    expect(readFileSync('node_modules/png-js/LICENSE', 'utf8')).toMatch(
      /MIT|Permission is hereby granted, free of charge/,
    ));
  it('but esbuild, which also works without, runs no script when it is installed', () =>
    expect(
      locked.filter(([, { hasInstallScript }]) => hasInstallScript === true).map(([folder]) => folder),
    ).toEqual(['node_modules/esbuild']));
});

describe('a package that we name', () => {
  it('is named by its exact version, and comes to nobody who installs ours', () => {
    expect(own.dependencies).toBeUndefined();
    for (const [name, version] of Object.entries(own.devDependencies))
      expect(version, name).toMatch(/^\d+\.\d+\.\d+(-[\w.]+)?$/);
  });
  it('has its reason in a line of DEVELOPERS.md', () => {
    const page = readFileSync('DEVELOPERS.md', 'utf8');
    const section = /\n## Dependencies\n([\s\S]*?)\n## /.exec(page)?.[1] ?? '';
    const reasons = [...section.matchAll(/^\| (`[^|]*`) \|([^|]{20,})\|$/gm)];
    const named = reasons.flatMap(([, names = '']) =>
      [...names.matchAll(/`([^`]+)`/g)].map(([, name]) => name),
    );
    expect(named.toSorted()).toEqual(Object.keys(own.devDependencies).toSorted());
  });
});

describe('what is in the program', () => {
  const notices = readFileSync(join(dist, 'NOTICES.txt'), 'utf8');
  const bill: Bill = JSON.parse(readFileSync(join(dist, 'sbom.json'), 'utf8'));
  const [, ...parts] = notices.split(/={80}\n(.*)\n={80}\n/);
  const titles = parts.filter((_, i) => i % 2 === 0);
  const texts = parts.filter((_, i) => i % 2 === 1);

  it('stands in one file with the texts of the licences', () => {
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
  it('is in the bill of materials, each with a licence that is allowed, and nothing else is', () => {
    const packages = bill.components.slice(0, -1);
    const listed = packages.map(
      ({ name, version, licenses: [first] }) => `${name} ${version} (${first?.license.id})`,
    );
    expect(listed.toSorted()).toEqual(titles.slice(0, -1).toSorted());
    for (const { licenses } of packages) expect(ALLOWED).toContain(licenses[0]?.license.id);
    expect(bill.components.at(-1)?.name).toMatch(/DejaVu/);
  });
  it('makes no code of texts, and asks for no network', () => {
    const program = readFileSync(join(dist, 'cli/quillpath.js'), 'utf8');
    expect(program).not.toMatch(/\bnew Function\b|[^.\w]eval\(/);
    const asked = [...program.matchAll(/\brequire\("(?:node:)?([\w/]+)"\)/g)].map(([, name]) => name);
    expect(asked).toContain('fs');
    for (const name of ['http', 'https', 'http2', 'net', 'tls', 'dgram', 'dns', 'child_process'])
      expect(asked).not.toContain(name);
    expect(program).not.toMatch(/\bfetch\(|\bWebSocket\(/);
  });
  it('is billed to the package by its name and version, and by nothing that another run would not write', () => {
    expect(bill.metadata.component).toMatchObject({ name: 'quillpath', version: own.version });
    expect(Object.keys(bill)).not.toContain('serialNumber');
    expect(Object.keys(bill.metadata)).not.toContain('timestamp');
    const refs = bill.dependencies.map(({ ref }) => ref);
    for (const { dependsOn } of bill.dependencies)
      expect(refs).toEqual(expect.arrayContaining([...dependsOn]));
  });
});
