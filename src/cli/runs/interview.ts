import type { UnitSystem } from '../../quantities/display-units.ts';
import { addShot } from '../../setup/add/add-shot.ts';
import { ShotWordsError } from '../../setup/add/shot-words.ts';
import type { Edit } from '../../setup/edit.ts';
import { type FirstQuestion, LATER_QUESTIONS, NEEDED_QUESTIONS } from '../../setup/first-questions.ts';
import { SetupError } from '../../setup/problem.ts';
import { LIMITS } from '../../setup/schema/limits.ts';
import { readQuantity } from '../../setup/schema/quantity-leaf.ts';
import { exampleOf } from '../../setup/schema/refusal.ts';
import { startedSetup } from '../../setup/started.ts';
import { withValues } from '../../setup/write.ts';
import { withBareUnit } from './bare-answer.ts';

/** A conversation with a person: what is said, and what comes back; null when the person has gone. */
export interface Talk {
  readonly say: (text: string) => void;
  readonly ask: (prompt: string) => Promise<string | null>;
}

type Outcome = { readonly values: readonly Edit[] } | 'back' | 'quit';

/**
 * A new setup file by asking: the five numbers that marks need, and more if the person wants to.
 *
 * @returns the text of the file; null when the person quit
 */
export async function interview(talk: Talk, units: UnitSystem): Promise<string | null> {
  talk.say(
    'Five measurements make a file. Type b to go back, q to quit; nothing is written before the end.\n',
  );
  const needed = await asked(talk, NEEDED_QUESTIONS, units, { mayBeLeft: false });
  if (typeof needed === 'string') return null;
  talk.say('\nThat is enough for marks. Parts of the arrow, the sight and what you shot make them better.');
  const more = await talk.ask('More now, or later? [m, or Enter for later] ');
  if (more === null || isQuit(more)) return null;
  if (!/^(m|more|now|y|yes)/i.test(more.trim())) return startedSetup(units, needed.values);
  talk.say('\nEnter leaves the value of the example; check names those that are left.\n');
  const later = await asked(talk, LATER_QUESTIONS, units, { mayBeLeft: true });
  if (typeof later === 'string') return null;
  const values = [...needed.values, ...later.values];
  return withMarks(talk, startedSetup(units, values), units, hasScale(values));
}

const isQuit = (answer: string): boolean => /^(q|quit|exit)$/i.test(answer.trim());
const isBack = (answer: string): boolean => /^(b|back)$/i.test(answer.trim());

/** One question after the other, each until it is answered; back from the first begins it anew. */
async function asked(
  talk: Talk,
  questions: readonly FirstQuestion[],
  units: UnitSystem,
  { mayBeLeft }: { readonly mayBeLeft: boolean },
): Promise<{ readonly values: readonly Edit[] } | 'quit'> {
  const answers: (Edit | null)[] = [];
  while (answers.length < questions.length) {
    const question = questions[answers.length];
    if (question === undefined) break;
    const outcome = await answered(talk, question, units, mayBeLeft);
    if (outcome === 'quit') return 'quit';
    if (outcome === 'back') answers.pop();
    else answers.push(outcome.values[0] ?? null);
  }
  return { values: answers.filter((answer) => answer !== null) };
}

async function answered(
  talk: Talk,
  { key, ask, how }: FirstQuestion,
  units: UnitSystem,
  mayBeLeft: boolean,
): Promise<Outcome> {
  const example = exampleOf(LIMITS[key], units === 'metric');
  talk.say(how);
  for (;;) {
    const typed = await talk.ask(`${ask}? [such as ${example}] `);
    if (typed === null || isQuit(typed)) return 'quit';
    if (isBack(typed)) return 'back';
    if (typed.trim() === '') {
      if (mayBeLeft) return { values: [] };
      talk.say('Type a value, b to go back, or q to quit.');
      continue;
    }
    const text = withBareUnit(key, typed.trim(), units);
    const read = readQuantity(key, text);
    if (read.refusal === undefined) {
      const value = read.readAs ?? text;
      if (value !== typed.trim()) talk.say(`Read as ${value}.`);
      return { values: [{ path: key.split('.'), value: NUMBER.test(value) ? Number(value) : value }] };
    }
    talk.say(`${read.refusal.reason}. Write ${read.refusal.write}.`.replace('..', '.'));
  }
}

const NUMBER = /^-?\d+(?:\.\d+)?$/;

const hasScale = (values: readonly Edit[]): boolean =>
  values.some(({ path }) => path.join('.') === 'sight.scale.travel_per_unit');

/** What a scale is called of which only the readings are known. */
const UNKNOWN_SCALE: readonly Edit[] = [
  { path: ['sight', 'scale', 'travel_per_unit'], value: 'unknown' },
  { path: ['sight', 'scale', 'increases'], value: 'down' },
];

/** Marks in the archer's words, as many as there are. */
async function withMarks(
  talk: Talk,
  begun: string,
  units: UnitSystem,
  scaleKnown: boolean,
): Promise<string | null> {
  talk.say(
    '\nWhat you shot, a mark a line: range, reading, arrows, group, where the middle hit. Enter when done.',
  );
  let text = begun;
  for (;;) {
    const words = await talk.ask('Mark? [such as 60 yd 31.9 6 arrows 5 in] ');
    if (words === null || isQuit(words)) return null;
    if (words.trim() === '') return text;
    try {
      const base = scaleKnown || text !== begun ? text : withValues(text, UNKNOWN_SCALE);
      const added = addShot(base, 'the new file', words, { units });
      talk.say(`Understood: ${added.understood.join(', ')}.`);
      text = added.text;
    } catch (error) {
      if (!(error instanceof ShotWordsError || error instanceof SetupError)) throw error;
      talk.say(error.message);
    }
  }
}
