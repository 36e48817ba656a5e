import { utcDay } from '../quantities/calendar-day.ts';
import type { UnitSystem } from '../quantities/display-units.ts';
import type { OpenSetup } from '../setup/open.ts';
import { type Occasion, quietly } from './occasion.ts';
import { type GivenTo, QUESTIONS, type QuestionName } from './questions.ts';
import type { Report } from './report.ts';
import { inUnits } from './session.ts';

/** How an answer is wanted. */
export interface Wanted extends Partial<Pick<Occasion, 'pool' | 'progress'>> {
  /** Units of its words, tables and drawings; imperial unless said otherwise. JSON data is SI whatever is chosen. */
  readonly units?: UnitSystem;
  /**
   * Draw the document of the question as well, with this date on it: a day (`2026-04-18`), or a moment, whose day at Greenwich is
   * printed. Without it `Report.sheet` is null.
   */
  readonly sheetDated?: Date | string;
}

/** No document is drawn with it. */
const NO_DATE = '';

/**
 * Ask one question of a setup, or of several for a question that compares them.
 *
 * @param name   a key of QUESTIONS; `(await QUESTIONS[name].question()).options` lists what may be asked
 * @param setups the setup, from `openSetup`; the first of several is the one that the others are compared with
 * @param given  the options as an archer writes them ("60 yd", "10 mph"); those left out have the defaults of the question
 * @throws QuestionError for an option that cannot be used; NumericalError or DomainError for what cannot be computed
 */
export function ask<Name extends QuestionName>(
  name: Name,
  setups: OpenSetup | readonly [OpenSetup, ...OpenSetup[]],
  given: GivenTo<Name> = {},
  { units = 'imperial', sheetDated, ...world }: Wanted = {},
): Promise<Report> {
  const [first, ...others] = isList(setups) ? setups : [setups];
  const day = sheetDated instanceof Date ? utcDay(sheetDated) : sheetDated;
  const occasion = { ...quietly(day ?? NO_DATE, day !== undefined), ...world };
  const sessions = [inUnits(first, units), ...others.map((setup) => inUnits(setup, units))] as const;
  return QUESTIONS[name].ask(sessions, given, units, occasion);
}

const isList = (
  setups: OpenSetup | readonly [OpenSetup, ...OpenSetup[]],
): setups is readonly [OpenSetup, ...OpenSetup[]] => Array.isArray(setups);
