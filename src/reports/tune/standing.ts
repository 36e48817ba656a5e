import {
  changedSince,
  nextStep,
  STEPS,
  type Step,
  type StepFacts,
  type StepState,
  stateOf,
} from '../../advice/tuning/next-step.ts';
import type { TuningChange } from '../../bow/tuning-steps.ts';
import { at } from '../../numerics/at.ts';
import { type Evening, loggedOf, NO_MORE, type StepAnswer } from './step-answer.ts';
import { STEP_WORDS } from './step-words.ts';
import { arrowsAnswer } from './steps/arrows.ts';
import { bareAnswer } from './steps/bare.ts';
import { drawAnswer } from './steps/draw.ts';
import { levelAnswer } from './steps/level.ts';
import { lineAnswer } from './steps/line.ts';
import { marksAnswer } from './steps/marks.ts';
import { nockAnswer } from './steps/nock.ts';
import { paperAnswer } from './steps/paper.ts';
import { startAnswer } from './steps/start.ts';
import { torqueAnswer } from './steps/torque.ts';

/** One step as it stands. */
export interface Standing {
  readonly step: Step;
  readonly state: StepState;
  readonly changed: readonly TuningChange[];
  /** Rounds in the log. */
  readonly entries: number;
  readonly answer: StepAnswer;
  readonly facts: StepFacts;
}

/** What a step found, from its rounds. */
function answerOf(evening: Evening, step: Step): StepAnswer {
  const logged = loggedOf(evening, step);
  if (step === 'marks') return marksAnswer(evening);
  if (step === 'start') return startAnswer(evening, logged.at(-1));
  if (logged.length === 0) return notLogged(step);
  const last = at(logged, logged.length - 1);
  switch (step) {
    case 'nock':
      return nockAnswer(evening, last);
    case 'draw':
      return drawAnswer(evening, last);
    case 'paper':
      return paperAnswer(evening);
    case 'torque':
      return torqueAnswer(evening, logged);
    case 'arrows':
      return arrowsAnswer(evening, last);
    case 'bare':
      return bareAnswer(evening, logged);
    case 'line':
      return lineAnswer(evening, logged);
    case 'level':
      return levelAnswer(evening, logged);
  }
}

const notLogged = (step: Step): StepAnswer => ({
  ...NO_MORE,
  verdict: 'not logged',
  done: false,
  line: `Nothing logged yet. ${STEP_WORDS[step].how}`,
  data: {},
});

/** A step as it stands; what the last round says of being done overrules what its numbers say. */
export function standingOf(evening: Evening, step: Step): Standing {
  const logged = loggedOf(evening, step);
  const last = logged.at(-1);
  const answer = answerOf(evening, step);
  const done = last?.entry.done ?? answer.done;
  const changed = last === undefined ? [] : changedSince(step, last.index, evening.rounds);
  const skipped = step !== 'marks' && evening.record.skip.includes(step);
  const facts = { step, done, skipped, changed };
  return { step, state: stateOf(facts), changed, entries: logged.length, answer, facts };
}

export const allStanding = (evening: Evening): readonly Standing[] =>
  STEPS.map((step) => standingOf(evening, step));

/** The step to do next; null when nothing is left. */
export function nextOf(standings: readonly Standing[]): Standing | null {
  const next = nextStep(standings.map(({ facts }) => facts));
  return next === null ? null : (standings.find(({ step }) => step === next.step) ?? null);
}
