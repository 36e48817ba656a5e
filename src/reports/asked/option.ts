import type { DisplayUnits } from '../../quantities/display-units.ts';

/**
 * What may be asked of a question, as data: a command line makes its options and help of it, a page its form, a script its
 * arguments. What is typed stays text until the question reads it, so that every door accepts the same words.
 */
interface Said {
  /** What it is and why it has its default; a noun phrase, as help and labels want it. */
  readonly what: string;
}

/** A quantity or other words. */
export interface TextOption extends Said {
  readonly kind: 'text';
  /** The kind of thing to write: "speed", "angle", "key=values". */
  readonly of: string;
  readonly value: string;
  /** The purpose whose unit a number without one takes, where the kind of thing does not say it. */
  readonly bare?: BarePurpose;
}

/** What a number without a unit may be for. */
export type BarePurpose = keyof DisplayUnits;

/** Words that may be left out; the question then has its own answer, or none. */
export interface OptionalText extends Said {
  readonly kind: 'optional text';
  readonly of: string;
}

/** A range or a step in yards; with metric units as many metres, so that a round number stays one. */
export interface RangeOption extends Said {
  readonly kind: 'range';
  readonly of: string;
  readonly yards: number;
}

export interface CountOption extends Said {
  readonly kind: 'count';
  readonly of: string;
  readonly least: number;
  readonly most: number;
  readonly value: number;
}

export interface ChoiceOption<Choice extends string> extends Said {
  readonly kind: 'choice';
  readonly of: string;
  readonly choices: readonly Choice[];
  readonly value: Choice;
}

export interface FlagOption extends Said {
  readonly kind: 'flag';
}

/** Words that are needed and may be written several times. */
export interface ListOption extends Said {
  readonly kind: 'list';
  readonly of: string;
}

/** Words that may be left out, and may be written several times. */
export interface OptionalList extends Said {
  readonly kind: 'optional list';
  readonly of: string;
}

/** A word that follows the setup and may be left out: what is asked about. */
export interface SubjectOption<Choice extends string> extends Said {
  readonly kind: 'subject';
  readonly of: string;
  readonly choices: readonly Choice[];
}

/** Another text, which the door reads: a file on a command line, a field on a page. */
export interface TextFileOption extends Said {
  readonly kind: 'text file';
  readonly of: string;
}

/** A text that a door has read, with the name it has there. */
export interface NamedText {
  readonly name: string;
  readonly text: string;
}

export type Option =
  | TextOption
  | OptionalText
  | RangeOption
  | CountOption
  | ChoiceOption<string>
  | FlagOption
  | ListOption
  | OptionalList
  | SubjectOption<string>
  | TextFileOption;
export type Options = Readonly<Record<string, Option>>;

type ValueOf<O extends Option> = O extends TextOption | RangeOption
  ? string
  : O extends OptionalText
    ? string | null
    : O extends CountOption
      ? number
      : O extends ChoiceOption<infer Choice>
        ? Choice
        : O extends SubjectOption<infer Subject>
          ? Subject | null
          : O extends TextFileOption
            ? NamedText | null
            : O extends FlagOption
              ? boolean
              : readonly string[];

/** The values of a question's options, all of them there. */
export type Asked<O extends Options> = { readonly [Name in keyof O]: ValueOf<O[Name]> };

export const text = (of: string, value: string, what: string, bare?: BarePurpose): TextOption => ({
  kind: 'text',
  of,
  value,
  what,
  ...(bare === undefined ? {} : { bare }),
});
export const optionalText = (of: string, what: string): OptionalText => ({ kind: 'optional text', of, what });
export const rangeIn = (yards: number, what: string): RangeOption => ({
  kind: 'range',
  of: 'range',
  yards,
  what,
});
export const stepIn = (yards: number, what: string): RangeOption => ({
  kind: 'range',
  of: 'step',
  yards,
  what,
});
export const count = (
  of: string,
  [least, most]: readonly [number, number],
  value: number,
  what: string,
): CountOption => ({ kind: 'count', of, least, most, value, what });
export const choice = <Choice extends string>(
  of: string,
  choices: readonly Choice[],
  value: Choice,
  what: string,
): ChoiceOption<Choice> => ({ kind: 'choice', of, choices, value, what });
export const subject = <Choice extends string>(
  of: string,
  choices: readonly Choice[],
  what: string,
): SubjectOption<Choice> => ({ kind: 'subject', of, choices, what });
export const textFile = (of: string, what: string): TextFileOption => ({ kind: 'text file', of, what });
export const flag = (what: string): FlagOption => ({ kind: 'flag', what });
export const optionalList = (of: string, what: string): OptionalList => ({ kind: 'optional list', of, what });
export const list = (of: string, what: string): ListOption => ({ kind: 'list', of, what });

/** The paper of a question that can be printed. */
export const PAPER = choice('size', ['a4', 'letter'], 'a4', 'paper');
