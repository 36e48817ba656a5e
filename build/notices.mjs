/**
 * The licence texts of everything that the bundles hold, as their licences ask, gathered from the packages themselves: what the
 * bundler says it took in, and the typeface.
 */
import { readdirSync, readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';

/** What may be inside: licences that ask for no more than their text. */
const ALLOWED = ['0BSD', 'Apache-2.0', 'BSD-2-Clause', 'BSD-3-Clause', 'ISC', 'MIT'];
/** Packages that name no licence in package.json, with the licence that their text is. */
export const UNNAMED = { 'png-js': 'MIT' };

const LINE = '='.repeat(80);

/** The folders of the packages whose files went into a bundle, by the bundler's own record. */
export const foldersIn = ({ outputs }) =>
  Object.values(outputs)
    .flatMap(({ inputs }) => Object.entries(inputs))
    .flatMap(([path, { bytesInOutput }]) => {
      if (bytesInOutput === 0) return [];
      const found = /^(.*node_modules\/(?:@[^/]+\/)?[^/]+)\//.exec(path);
      return found === null ? [] : [found[1]];
    });

/** The licence at the end of a package's README, where it has its text there. */
function inReadme(folder) {
  const file = readdirSync(folder).find((name) => /^readme\.md$/i.test(name));
  const text = file === undefined ? '' : readFileSync(join(folder, file), 'utf8');
  const start = text.search(/^(#+ )?licen[cs]e\b[^\n]*$/im);
  const section = start < 0 ? '' : text.slice(start).trim();
  return section.includes('Permission is hereby granted') ? [section] : [];
}

/** Some packages name the licence and its holder, and leave out the text, which is that of our own. */
const mitBy = (root, author) =>
  readFileSync(join(root, 'LICENSE'), 'utf8')
    .trim()
    .replace(/^Copyright.*$/m, `Copyright (c) ${author.replace(/ *<.*/, '')}`);

/** A package's name, version, licence and the texts of it. @throws an Error for a licence that is not allowed or has no text */
function noticeOf(root, folder) {
  const { name, version, license, author } = JSON.parse(
    readFileSync(join(root, folder, 'package.json'), 'utf8'),
  );
  const named = license ?? UNNAMED[name];
  if (!ALLOWED.includes(named))
    throw new Error(`${name} ${version} has the licence ${named}, which is not allowed`);
  const files = readdirSync(join(root, folder)).filter((file) =>
    /^(licen[cs]e|notice|copying)(\.(md|txt|mit))?$/i.test(file),
  );
  const texts = files.map((file) => readFileSync(join(root, folder, file), 'utf8').trim());
  if (texts.length === 0) texts.push(...inReadme(join(root, folder)));
  if (texts.length === 0 && named === 'MIT') texts.push(mitBy(root, String(author?.name ?? author)));
  if (texts.length === 0) throw new Error(`${name} ${version} comes without the text of its licence`);
  return { title: `${name} ${version} (${named})`, texts };
}

/** Write dist/NOTICES.txt for the packages of these folders. */
export function writeNotices(root, folders) {
  const packages = [...new Set(folders)].map((folder) => noticeOf(root, folder));
  const font = {
    title: 'The typeface of the documents',
    texts: [readFileSync(join(root, 'src/documents/fonts/LICENSE'), 'utf8').trim()],
  };
  const all = [...packages.toSorted((a, b) => (a.title < b.title ? -1 : 1)), font];
  const text = all.map(({ title, texts }) => `${LINE}\n${title}\n${LINE}\n\n${texts.join('\n\n')}\n`);
  writeFileSync(
    join(root, 'dist/NOTICES.txt'),
    `What quillpath is built with, and under which licences.\n\n${[...new Set(text)].join('\n')}`,
  );
}
