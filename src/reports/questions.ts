import type { UnitSystem } from '../quantities/display-units.ts';
import { filled } from './asked/fill.ts';
import type { Asked, NamedText, Options } from './asked/option.ts';
import type { Question } from './asked/question.ts';
import type { Occasion } from './occasion.ts';
import type { Report } from './report.ts';
import type { Sessions } from './session.ts';

/** A question and its answer, each loaded when it is first needed: a line of help needs no physics. */
export interface Asking<O extends Options = Options> {
  readonly question: () => Promise<Question<O>>;
  /** @throws QuestionError for options that cannot be answered; what the computation throws */
  readonly ask: (
    sessions: Sessions,
    given: Readonly<Record<string, unknown>>,
    system: UnitSystem,
    occasion: Occasion,
  ) => Promise<Report>;
}

type Answer<O extends Options> = (
  sessions: Sessions,
  asked: Asked<O>,
  occasion: Occasion,
) => Report | Promise<Report>;

const asking = <O extends Options>(
  loadQuestion: () => Promise<{ readonly question: Question<O> }>,
  loadReport: () => Promise<{ readonly report: Answer<O> }>,
): Asking<O> => ({
  question: async () => (await loadQuestion()).question,
  ask: async (sessions, given, system, occasion) => {
    const [{ question }, { report }, { standingAsked, standingData }, { undomained }] = await Promise.all([
      loadQuestion(),
      loadReport(),
      import('./standing/standing-asked.ts'),
      import('./asked/undomained.ts'),
    ]);
    const asked = filled(question, given, system);
    try {
      const standing = standingAsked(sessions, asked);
      const answer = await report(standing, asked, occasion);
      return { ...answer, data: { ...answer.data, ...standingData(standing[0], asked) } };
    } catch (error) {
      throw undomained(error, { options: question.options, given, asked }, sessions[0]);
    }
  },
});

/** Every question that can be asked of a setup, in the order of a first evening. A new one needs its folder and a line here. */
export const QUESTIONS = {
  check: asking(
    () => import('./check/question.ts'),
    () => import('./check/report.ts'),
  ),
  fly: asking(
    () => import('./fly/question.ts'),
    () => import('./fly/report.ts'),
  ),
  marks: asking(
    () => import('./marks/question.ts'),
    () => import('./marks/report.ts'),
  ),
  fit: asking(
    () => import('./fit/question.ts'),
    () => import('./fit/report.ts'),
  ),
  tape: asking(
    () => import('./tape/question.ts'),
    () => import('./tape/report.ts'),
  ),
  card: asking(
    () => import('./card/question.ts'),
    () => import('./card/report.ts'),
  ),
  cant: asking(
    () => import('./cant/question.ts'),
    () => import('./cant/report.ts'),
  ),
  pins: asking(
    () => import('./pins/question.ts'),
    () => import('./pins/report.ts'),
  ),
  slope: asking(
    () => import('./slope/question.ts'),
    () => import('./slope/report.ts'),
  ),
  misjudge: asking(
    () => import('./misjudge/question.ts'),
    () => import('./misjudge/report.ts'),
  ),
  wind: asking(
    () => import('./wind/question.ts'),
    () => import('./wind/report.ts'),
  ),
  swing: asking(
    () => import('./swing/question.ts'),
    () => import('./swing/report.ts'),
  ),
  broadhead: asking(
    () => import('./broadhead/question.ts'),
    () => import('./broadhead/report.ts'),
  ),
  scatter: asking(
    () => import('./scatter/question.ts'),
    () => import('./scatter/report.ts'),
  ),
  compare: asking(
    () => import('./compare/question.ts'),
    () => import('./compare/report.ts'),
  ),
  vary: asking(
    () => import('./vary/question.ts'),
    () => import('./vary/report.ts'),
  ),
  tune: asking(
    () => import('./tune/question.ts'),
    () => import('./tune/report.ts'),
  ),
} as const;

export type QuestionName = keyof typeof QUESTIONS;

/** What may be said to one question; the question itself checks the values. */
export type GivenTo<Name extends QuestionName> = {
  readonly [Option in keyof Awaited<ReturnType<(typeof QUESTIONS)[Name]['question']>>['options']]?:
    | string
    | number
    | boolean
    | readonly string[]
    | NamedText;
};
