import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { gzipSync } from 'node:zlib';
import { expect, inject, it } from 'vitest';

/** What a visit may weigh, kB of gzip: a phone at the edge of a network loads the first script in a few seconds. */
const MOST = { 'app.js': 160, 'pdf.js': 225 } as const;

const text = (name: string): string => readFileSync(join(inject('page'), name), 'utf8');

it.each(Object.entries(MOST))('%s is at most %d kB', (name, most) =>
  expect(gzipSync(text(name), { level: 9 }).length).toBeLessThanOrEqual(most * 1000),
);

it('the policy stands in every page, and a script in the text only where its hash is in the policy', () => {
  expect(text('index.html')).toMatch(
    /Content-Security-Policy" content="default-src 'none'; script-src 'self'; style-src 'self'/,
  );
  expect(text('index.html')).not.toMatch(/<script(?! src=)/);
  expect(text('quillpath.html')).toMatch(/script-src 'sha256-[^']+' blob:; style-src 'sha256-[^']+'/);
});

it('nothing in it names an address elsewhere but those of standards', () => {
  const known =
    /^https?:\/\/(www\.w3\.org|json-schema\.org|mathjs\.org|localhost|127\.0\.0\.1|github\.com|yaml\.org)/;
  for (const name of ['app.js', 'core.js', 'more.js', 'index.html', 'sw.js']) {
    const found = text(name).match(/https?:\/\/[\w.-]+\.[a-z]{2,}/g) ?? [];
    expect(
      found.filter((address) => !known.test(address)),
      name,
    ).toEqual([]);
  }
});

it('writes no markup: what a person typed is set as text', () => {
  for (const name of ['app.js', 'core.js', 'more.js'])
    expect(text(name)).not.toMatch(/innerHTML|insertAdjacentHTML|document\.write/);
});
