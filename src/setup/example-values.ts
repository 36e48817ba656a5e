import { dotted, isRecord, type KeyPath } from './key-path.ts';
import { LIMITS } from './schema/limits.ts';
import { starterSetup } from './starter.ts';
import { readYaml } from './yaml/yaml-text.ts';

/** Values that an archer may well have in common with the example: nobody measures them. */
const COMMON = ['arrow.parts.vanes.count', 'sight.zero_range'];

/**
 * The keys whose lines still stand as the template has them, comment and all, so that nobody has put a value of their own
 * there. A value that happens to be the same is one's own as soon as its comment is changed or taken away.
 *
 * @returns key paths with dots, in the order of the template
 */
export function exampleValues(text: string): readonly string[] {
  if (!COMMENT_OF_TEMPLATE.test(text)) return [];
  const lines = new Set(text.split(/\r?\n/).map((line) => line.trim()));
  template ??= (['imperial', 'metric'] as const).flatMap((units) => linesOfTemplate(starterSetup({ units })));
  const keys = template.filter(({ line }) => lines.has(line)).map(({ key }) => key);
  return [...new Set(keys)];
}

/** A comment in the column in which the template has them: without one, no line is the template's. */
const COMMENT_OF_TEMPLATE = /^.{38,}# .*\.\s*$/m;

interface TemplateLine {
  readonly key: string;
  readonly line: string;
}

/** Both templates take some 80 ms to read, and several answers of one run ask for them. */
let template: readonly TemplateLine[] | undefined;

function linesOfTemplate(text: string): readonly TemplateLine[] {
  const yaml = readYaml(text);
  const lines = text.split('\n');
  return measuredKeys(yaml.value, []).flatMap((path) => {
    const line = lines[yaml.locateKey(path).line - 1];
    return line === undefined ? [] : [{ key: dotted(path), line: line.trim() }];
  });
}

function measuredKeys(value: unknown, path: KeyPath): readonly KeyPath[] {
  if (isRecord(value))
    return Object.entries(value).flatMap(([key, child]) => measuredKeys(child, [...path, key]));
  const key = dotted(path);
  return Object.hasOwn(LIMITS, key) && !COMMON.includes(key) ? [path] : [];
}
