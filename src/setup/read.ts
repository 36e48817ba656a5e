import { canonical, canonicalPath } from './canonical/canonical.ts';
import { agreementFaults } from './checks/agreement-checks.ts';
import { crossFaults } from './checks/cross-checks.ts';
import { draftOf } from './checks/draft.ts';
import type { Fault } from './checks/fault.ts';
import { swapFaults } from './checks/swap-checks.ts';
import { tuningFaults } from './checks/tuning-checks.ts';
import { dotted, isRecord, type KeyPath, valueAt, withValueAt } from './key-path.ts';
import { LONGEST_TEXT } from './longest-text.ts';
import { MOST_KEPT, SetupError } from './problem.ts';
import { quantitiesReadAs } from './read-as.ts';
import { readingStepOf } from './reading-step.ts';
import { withSectionsSettled } from './schema/known-keys.ts';
import { type SetupFile, setupSchema } from './schema/schema.ts';
import { schemaFaults } from './schema/schema-faults.ts';
import { foundAt, problemOf, wholeFileProblem } from './setup-problems.ts';
import { TOO_DEEP, unreadable } from './yaml/unreadable.ts';
import { MOST_VALUES } from './yaml/yaml-plain.ts';
import { readYaml, type YamlText } from './yaml/yaml-text.ts';

/** A value from outside the file that replaces one in it, or stands for one that is not there. */
export interface Override {
  readonly path: readonly string[];
  readonly value: string;
}

/**
 * The archer's file as data in SI.
 *
 * @param overrides values that replace those of the file, as a command line gives them
 * @throws SetupError with every problem that the text has, each with its line, path, what is allowed and what to write
 */
export function readSetup(text: string, fileName: string, overrides: readonly Override[] = []): SetupFile {
  const yaml = yamlOf(text, fileName);
  const named = canonical(yaml.value);
  const { value, misplaced } = withOverrides(named.value, overrides);
  const settled = withSectionsSettled(setupSchema, value);
  const parsed = setupSchema.safeParse(settled);
  const draft = draftOf(settled);
  const single = [
    ...misplaced,
    ...swapFaults(draft),
    ...(parsed.success ? [] : schemaFaults(parsed.error.issues, settled)),
    ...crossFaults(draft),
    ...tuningFaults(settled),
  ];
  const arrowVaried = overrides.some(({ path }) => path[0] === 'arrow');
  const faults = parsed.success && single.length === 0 ? agreementFaults(parsed.data, arrowVaried) : single;
  const cameFromOutside = (path: KeyPath) =>
    overrides.some(
      (override) => startsWith(path, override.path) || startsWith(path, canonicalPath(override.path)),
    );
  const isMadeOutside = ({ path, at }: Fault) =>
    at === 'key' &&
    valueAt(named.value, path) === undefined &&
    overrides.some((override) => startsWith(override.path, path));
  const problems = [
    ...[...yaml.syntax, ...yaml.refused].map((problem) => ({
      ...problem,
      problem: () => problemOf(fileName, problem.path, problem),
    })),
    ...worthTelling(faults, yaml).map((fault) => {
      const outside = cameFromOutside(fault.path) || isMadeOutside(fault);
      const written = named.writtenAt(fault.path);
      const place = outside ? COMMAND_LINE : yaml[fault.at === 'key' ? 'locateKey' : 'locate'](written);
      const write = outside ? writtenOutside(fault) : fault.write;
      const problem = () =>
        problemOf(fileName, fault.path, { ...fault, write, ...place, found: foundAt(fault, settled) });
      return { ...place, problem };
    }),
  ];
  if (problems.length === 0 && parsed.success) {
    const readingStep = readingStepOf(settled);
    const readAs = [
      ...named.readAs,
      ...quantitiesReadAs(settled).map((each) => ({ ...each, path: dotted(named.writtenAt(each.path)) })),
    ];
    return {
      ...parsed.data,
      ...(readingStep === undefined ? {} : { readingStep }),
      ...(readAs.length === 0 ? {} : { readAs }),
    };
  }
  const first = problems.toSorted((a, b) => a.line - b.line || a.column - b.column).slice(0, MOST_KEPT);
  throw new SetupError(
    fileName,
    first.map(({ problem }) => problem()),
    problems.length,
  );
}

/** Where an override belongs: under the name that the file's schema has for it, when that is in the file. */
function placeIn(root: unknown, path: readonly string[]): readonly string[] {
  const meant = canonicalPath(path);
  return valueAt(root, path) === undefined && valueAt(root, meant.slice(0, -1)) !== undefined ? meant : path;
}

/** What to write on a command line, where nothing can be moved. */
function writtenOutside({ at, meant, paths, write }: Fault): string {
  if (paths !== undefined) return `Write ${paths.join(' or ')}`;
  return at === 'key' && meant === undefined
    ? 'Write the whole path of a key, such as arrow.parts.point.mass'
    : write;
}

const COMMAND_LINE = { line: 0, column: 0 };

const startsWith = (path: KeyPath, start: KeyPath): boolean =>
  start.every((step, i) => String(path[i]) === String(step));

/** What a file should hold, for the messages about one that does not. */
interface Wanted {
  readonly file: string;
  readonly sections: string;
  readonly start: string;
}

const A_SETUP: Wanted = {
  file: 'a setup of one bow and arrow',
  sections: 'sections with keys under them: bow, arrow, launch, sight',
  start: 'Start from the file that "quillpath new" writes',
};

/** A text as sections, lists and texts. @throws SetupError for a text that is not one of those */
export function yamlOf(text: string, fileName: string, wanted: Wanted = A_SETUP): YamlText {
  const refuse = (reason: string, allowed: string, write: string) =>
    new SetupError(fileName, [wholeFileProblem(fileName, reason, allowed, write)]);
  if (text.length > LONGEST_TEXT)
    throw refuse('the file is too long', 'up to 256 kB of text', 'Give the name of a setup file');
  // biome-ignore lint/suspicious/noControlCharactersInRegex: they show that a file is not a text
  if (/[\u0000-\u0008\u000e-\u001f\ufffd]/.test(text))
    throw refuse(
      'the file is not a text',
      'a text file in UTF-8',
      'Give the name of a setup file, or save it as UTF-8 text',
    );
  const unread = unreadable(text);
  if (unread !== null) throw refuse(unread.reason, unread.allowed, unread.write);
  const yaml = orUndefined(() => readYaml(text.replace(/^\ufeff/, '')));
  if (yaml === undefined) throw refuse(TOO_DEEP.reason, TOO_DEEP.allowed, TOO_DEEP.write);
  if (yaml.values > MOST_VALUES)
    throw refuse(
      `has ${yaml.values} keys with a value`,
      `at most ${MOST_VALUES}`,
      'Remove the others, or give the name of a setup file',
    );
  if (yaml.syntax.length > 0 || yaml.refused.length > 0 || isRecord(yaml.value)) return yaml;
  if ((yaml.value ?? null) === null && /^[^\n]*\r[^\n]+$/.test(text))
    throw refuse(
      'all of it is one line, as its line ends are those of old computers (CR)',
      'lines that end with LF, or with CR and LF',
      'Save it anew with line ends of today',
    );
  if ((yaml.value ?? null) === null) throw refuse('the file is empty', wanted.file, wanted.start);
  throw refuse(
    Array.isArray(yaml.value) ? 'the file begins with a list' : 'the file is a single value',
    wanted.sections,
    /^[ \t]*\w+:\S/m.test(text) ? 'Write a space after every colon' : wanted.start,
  );
}

/** The parser runs out of stack on brackets nested by the thousand; whatever it throws, the text is not a setup. */
function orUndefined<T>(read: () => T): T | undefined {
  try {
    return read();
  } catch {
    return undefined;
  }
}

function withOverrides(root: unknown, overrides: readonly Override[]) {
  const misplaced: Fault[] = [];
  let value: unknown = isRecord(root) ? root : {};
  for (const { path, value: text } of overrides) {
    const changed = withValueAt(value, placeIn(value, path), text);
    if (isRecord(changed)) value = changed;
    else
      misplaced.push({
        path,
        at: 'key',
        reason: 'there is no such key to change',
        allowed: 'a key path such as arrow.mass, or marks.0.range for the first entry of a list',
        write: 'Write the path of a key',
      });
  }
  return { value, misplaced };
}

/** Faults that do not merely follow from another one. */
export function worthTelling(
  faults: readonly Fault[],
  { syntax, refused, locate }: Pick<YamlText, 'syntax' | 'refused' | 'locate'>,
): readonly Fault[] {
  const firstMisread = syntax.reduce((first, { line }) => Math.min(first, line), Number.POSITIVE_INFINITY);
  const refusedAt = new Set(refused.map(({ path }) => dotted(path)));
  const meant = new Set(faults.flatMap((fault) => (fault.meant === undefined ? [] : [dotted(fault.meant)])));
  const reported = new Set<string>();
  return faults.filter(({ path, at }) => {
    if (syntax.length > 0 && (at === 'missing' || locate(path).line >= firstMisread)) return false;
    if (at === 'missing' && meant.has(dotted(path))) return false;
    if (refusedAt.size > 0 && path.some((_, i) => refusedAt.has(dotted(path.slice(0, i + 1))))) return false;
    const first = !reported.has(dotted(path));
    reported.add(dotted(path));
    return first;
  });
}
