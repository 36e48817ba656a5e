import type { Axis } from '../../advice/builds/vary.ts';
import { howMany } from '../asked/how-many.ts';
import { QuestionError } from '../asked/question-error.ts';

/** One key that is varied: its values as the file would hold them, and as numbers of one unit where they are. */
export interface VariedKey extends Axis<string> {
  /** Null when the values are words. */
  readonly numbers: readonly number[] | null;
  readonly unit: string;
}

const MOST_VALUES = 1000;
const HOW =
  'Write {over} arrow.parts.point.mass=100gr:200gr:25gr, or {over} arrow.parts.point.shape=field,bullet.';

/** Keys of what was shot, which hold the calibration that every variation starts from. */
const SHOT = /^(marks|speeds|drops|builds)\b/;

/** `KEY=LOW:HIGH:STEP` or `KEY=VALUE,VALUE,...`. @throws QuestionError for anything else */
export function variedKey(text: string): VariedKey {
  const split = /^\s*([\w.]+)\s*=\s*(.+)$/.exec(text);
  const [, name, values] = split ?? [];
  if (name === undefined || values === undefined)
    throw new QuestionError(`{over}: "${text}" does not give a key and values`, HOW);
  if (SHOT.test(name))
    throw new QuestionError(
      `{over}: ${name} is what was shot, so it cannot be varied`,
      'Change it in the file and run fit; vary takes keys of bow, arrow, launch, sight and air.',
    );
  const steps = values.split(':');
  if (steps.length === 1)
    return listed(
      name,
      values.split(',').map((value) => value.trim()),
    );
  return stepped(name, values, steps.map(numberAndUnit));
}

interface Measured {
  readonly number: number;
  readonly unit: string;
}

function numberAndUnit(text: string): Measured | null {
  const [, number, unit = ''] = /^\s*([-+]?(?:\d+\.?\d*|\.\d+)(?:e[-+]?\d+)?)\s*(\S*)\s*$/i.exec(text) ?? [];
  return number === undefined ? null : { number: Number(number), unit };
}

function stepped(name: string, text: string, parts: readonly (Measured | null)[]): VariedKey {
  const [low, high, step] = parts;
  if (
    low === null ||
    low === undefined ||
    high === null ||
    high === undefined ||
    step === null ||
    step === undefined
  )
    throw new QuestionError(`{over} ${name}: "${text}" is not low:high:step`, HOW);
  if (parts.length > 3) throw new QuestionError(`{over} ${name}: "${text}" has more than three numbers`, HOW);
  const unit = low.unit || high.unit || step.unit;
  if ([low, high, step].some((part) => part.unit !== '' && part.unit !== unit))
    throw new QuestionError(`{over} ${name}: "${text}" mixes units`, `Write all three in ${unit}.`);
  if (!(step.number > 0 && high.number >= low.number))
    throw new QuestionError(
      `{over} ${name}: "${text}" does not lead from low to high`,
      'Write low:high:step with a step greater than zero.',
    );
  const count = Math.floor((high.number - low.number) / step.number + 1e-9) + 1;
  if (count > MOST_VALUES)
    throw new QuestionError(
      `{over} ${name}: that would be ${howMany(count)} values`,
      `Write a step that gives at most ${MOST_VALUES}.`,
    );
  // Ten digits: 0.1 + 2 x 0.1 is then 0.3.
  const numbers = Array.from({ length: count }, (_, i) =>
    Number((low.number + i * step.number).toPrecision(10)),
  );
  return { name, values: numbers.map((number) => `${number} ${unit}`.trimEnd()), numbers, unit };
}

function listed(name: string, values: readonly string[]): VariedKey {
  if (values.length > MOST_VALUES)
    throw new QuestionError(
      `{over} ${name}: these are ${values.length} values`,
      `Write at most ${MOST_VALUES}.`,
    );
  const measured = values.map(numberAndUnit);
  const unit = measured[0]?.unit ?? '';
  const numbers = measured.flatMap((part) => (part !== null && part.unit === unit ? [part.number] : []));
  return {
    name,
    values,
    numbers: numbers.length === values.length ? numbers : null,
    unit: numbers.length === values.length ? unit : '',
  };
}
