import { TUNING_STEPS, type TuningStep } from '../../bow/tuning-steps.ts';
import type { Fault } from '../checks/fault.ts';
import type { KeyPath } from '../key-path.ts';
import type { OpenSetup } from '../open.ts';
import { SetupError } from '../problem.ts';
import type { TuningEntry } from '../schema/schema.ts';
import { foundAt, problemOf } from '../setup-problems.ts';
import { readYaml } from '../yaml/yaml-text.ts';
import { readTuningLog } from './read-log.ts';

/** A text that a door has read, with the name for messages. */
export interface NamedText {
  readonly name: string;
  readonly text: string;
}

/** The record of a bow's tuning, from its setup and from a file of its own. */
export interface TuningRecord {
  readonly skip: readonly TuningStep[];
  /** By day, those of one day as they stand, the setup's before the file's. */
  readonly log: readonly TuningEntry[];
}

/**
 * What was tuned on the bow of a setup, from its `tuning:` and from a log in another text.
 *
 * @throws SetupError for a log that cannot be used, alone or with this setup
 */
export function openTuning(opened: OpenSetup, file: NamedText | null): TuningRecord {
  const own = opened.setup.tuning;
  const other = file === null ? undefined : readTuningLog(file.text, file.name);
  const [mine, theirs] = [own?.log ?? [], other?.log ?? []];
  const problems = [
    ...faultsWith(opened, mine, ['tuning', 'log']).map((fault) => problemIn(opened, fault)),
    ...(file === null
      ? []
      : faultsWith(opened, theirs, ['log']).map((fault) =>
          problemIn(fault.path[0] === 'log' ? file : opened, fault),
        )),
  ];
  if (problems.length > 0) throw new SetupError(opened.name, problems);
  const skipped = [...(own?.skip ?? []), ...(other?.skip ?? [])];
  return {
    skip: TUNING_STEPS.filter((step) => skipped.includes(step)),
    log: [...mine, ...theirs].toSorted((a, b) => (a.date < b.date ? -1 : Number(a.date > b.date))),
  };
}

/** What the rounds need of the setup, which their own reader cannot see. */
function faultsWith(
  { setup, assembly }: OpenSetup,
  log: readonly TuningEntry[],
  at: KeyPath,
): readonly Fault[] {
  const torque = log.some(({ step }) => step === 'torque');
  const flown = log.some(({ step, bare }) => step === 'paper' || bare !== undefined);
  const fletched = assembly.arrow.flying.mass;
  return [
    ...(torque && setup.sight.extension === undefined
      ? [
          {
            path: ['sight', 'extension'],
            at: 'missing',
            reason: 'is missing, and torque is in the log',
            allowed: "pin ahead of the grip's deepest point when peep_to_pin was measured",
            write: 'Add "extension: 5.75 in" under "sight:"',
          } satisfies Fault,
        ]
      : []),
    ...(flown && assembly.arrow.parts === null
      ? [
          {
            path: ['arrow', 'parts'],
            at: 'missing',
            reason: 'is missing, so what turns this arrow is not known; paper and bare shafts need it',
            allowed: 'parts: { shaft, insert, point, nock, vanes }',
            write: 'Add "parts:" under "arrow:", with the shaft, the point and the vanes',
          } satisfies Fault,
        ]
      : []),
    ...log.flatMap(({ bare_mass: bare, fletched_mass: whole }, i): readonly Fault[] =>
      bare !== undefined && bare >= (whole ?? fletched)
        ? [
            {
              path: [...at, i, 'bare_mass'],
              at: 'value',
              reason: 'is not below the mass of the fletched arrow, but a bare shaft is lighter',
              allowed: 'less than the fletched arrow',
              write: 'Swap the two, or take tape off the bare shaft',
            },
          ]
        : [],
    ),
  ];
}

/** A fault of a text that was read before, in its place. */
function problemIn({ name, text }: NamedText, fault: Fault) {
  const yaml = readYaml(text);
  const { path } = fault;
  return problemOf(name, path, { ...fault, ...yaml.locate(path), found: foundAt(fault, yaml.value) });
}
