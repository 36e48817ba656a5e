import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import ts from 'typescript';
import { expect, it } from 'vitest';
import { statedSd } from '../../src/setup/assemble/stated-sd.ts';

/** Names that code reads from an object: `a.name`, `{ name }`, `{ name: other }`. */
function namesRead(path: string): readonly string[] {
  const names: string[] = [];
  const visit = (node: ts.Node): void => {
    if (ts.isPropertyAccessExpression(node)) names.push(node.name.text);
    if (ts.isBindingElement(node)) names.push((node.propertyName ?? node.name).getText());
    node.forEachChild(visit);
  };
  visit(ts.createSourceFile(path, readFileSync(path, 'utf8'), ts.ScriptTarget.ES2023, true));
  return names;
}

const files = readdirSync('src', { encoding: 'utf8', recursive: true })
  .filter((path) => path.endsWith('.ts'))
  .map((path) => join('src', path));

it('a standard uncertainty of a setup file is read through statedSd alone', () => {
  const readElsewhere = files.filter((path) => namesRead(path).some((name) => name.endsWith('_sd')));
  expect(readElsewhere).toEqual([]);
});

it.each(Object.keys(statedSd))('statedSd.%s is asked for by a computation', (name) =>
  expect(files.filter((path) => readFileSync(path, 'utf8').includes(`statedSd.${name}(`))).not.toEqual([]),
);
