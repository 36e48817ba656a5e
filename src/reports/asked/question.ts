import type { UnitSystem } from '../../quantities/display-units.ts';
import type { Options } from './option.ts';

/** A question that can be asked of a setup: its name, what may be asked, and how to show it to a person. */
export interface Question<O extends Options = Options> {
  readonly name: string;
  /** What it answers, in a sentence. */
  readonly purpose: string;
  readonly options: O;
  /** One setup, or several side by side. */
  readonly setups: 'one' | 'several';
  /** What the setups are, where there are several. */
  readonly setupsWhat?: string;
  /** Whether it has rows for a spreadsheet. */
  readonly hasRows: boolean;
  /** A document on paper: always, when asked for, or none; and what to say of the file. */
  readonly sheet: {
    readonly when: 'always' | 'asked';
    readonly what: string;
    readonly example: string;
  } | null;
  /** Words after the options, when they need a list of their own. */
  readonly more?: string;
  /** For help: a comment, then what to write after the name of the question. */
  readonly examples: readonly (readonly [comment: string, line: string])[];
  /** Whether ranges that nobody wrote are round numbers of metres; with metric units unless the question says otherwise. */
  readonly countsMetres?: (asked: Readonly<Record<string, unknown>>, system: UnitSystem) => boolean;
}

/** What most questions are: one setup, rows, no paper. */
export const question = <O extends Options>(
  told: Pick<Question<O>, 'name' | 'purpose' | 'options' | 'examples'> & Partial<Question<O>>,
): Question<O> => ({ setups: 'one', hasRows: true, sheet: null, ...told });
