import * as z from 'zod/mini';
import { tuningFaults } from '../checks/tuning-checks.ts';
import { isRecord, type KeyPath } from '../key-path.ts';
import { SetupError } from '../problem.ts';
import { worthTelling, yamlOf } from '../read.ts';
import { withSectionsSettled } from '../schema/known-keys.ts';
import type { TuningSection } from '../schema/schema.ts';
import { schemaFaults } from '../schema/schema-faults.ts';
import { tuningSchema } from '../schema/tuning-schema.ts';
import { foundAt, problemOf } from '../setup-problems.ts';

const A_LOG = {
  file: 'a tuning log: skip and log',
  sections: 'the keys skip and log',
  start: 'Begin it with "log:" and write each round below it',
};

/** The whole of a setup as far as the log goes, so that keys have the paths that they have in a setup. */
const SECTION = 'tuning';
const rootSchema = z.strictObject({ [SECTION]: tuningSchema });

/**
 * A tuning log in a file of its own: what stands under `tuning:` in a setup, with or without that first line.
 *
 * @throws SetupError with every problem that the text has
 */
export function readTuningLog(text: string, fileName: string): TuningSection {
  const yaml = yamlOf(text, fileName, A_LOG);
  const wrapped = isRecord(yaml.value) && Object.hasOwn(yaml.value, SECTION);
  const inFile = (path: KeyPath): KeyPath => (wrapped ? path : path.slice(1));
  const root = withSectionsSettled(rootSchema, wrapped ? yaml.value : { [SECTION]: yaml.value });
  const parsed = rootSchema.safeParse(root);
  const faults = [...(parsed.success ? [] : schemaFaults(parsed.error.issues, root)), ...tuningFaults(root)];
  const told = worthTelling(faults, { ...yaml, locate: (path) => yaml.locate(inFile(path)) });
  const problems = [
    ...[...yaml.syntax, ...yaml.refused].map((problem) => problemOf(fileName, problem.path, problem)),
    ...told.map((fault) => {
      const path = inFile(fault.path);
      const position = fault.at === 'key' ? yaml.locateKey(path) : yaml.locate(path);
      return problemOf(fileName, path, { ...fault, ...position, found: foundAt(fault, root) });
    }),
  ];
  if (problems.length === 0 && parsed.success) return parsed.data[SECTION];
  throw new SetupError(
    fileName,
    problems.toSorted((a, b) => a.line - b.line || a.column - b.column),
  );
}
