import { localDay } from '../../quantities/calendar-day.ts';
import {
  ask,
  failureWords,
  NumericalError,
  type OpenSetup,
  openSetup,
  type Progress,
  QuestionError,
  type QuestionName,
  type Report,
  SetupError,
  type UnitSystem,
} from '../../quillpath.ts';
import { ContradictionError } from '../../reports/asked/contradiction-error.ts';
import type { Given } from './given.ts';
import { optionLabel } from './option-label.ts';

/** A question as it travels to a worker: text and words only. */
export interface Asked {
  readonly question: QuestionName;
  /** The setups by name and text; the first is the one that others are compared with. */
  readonly setups: readonly [Named, ...Named[]];
  readonly given: Given;
  readonly units: UnitSystem;
  /** Leave aside what was shot. */
  readonly uncalibrated: boolean;
  /** When the document was asked for, ms: it carries that day where the archer is. Null when none is wanted. */
  readonly dated: number | null;
}

export interface Named {
  readonly name: string;
  readonly text: string;
}

/** What came of it. */
export type Outcome =
  | { readonly report: Report }
  | {
      /** Why there is no answer, in words for the page. */
      readonly failure: string;
      /** Whether a draft may be had all the same. */
      readonly draft: boolean;
    };

/** Setups opened lately, by their text: a slider asks the same one again and again. */
const opened: { readonly key: string; readonly setup: OpenSetup }[] = [];
const MOST_OPENED = 4;

function openNamed({ name, text }: Named, uncalibrated: boolean): OpenSetup {
  const key = `${uncalibrated}\n${name}\n${text}`;
  const known = opened.find((each) => each.key === key);
  if (known !== undefined) return known.setup;
  const setup = openSetup(text, name, { uncalibrated });
  opened.unshift({ key, setup });
  opened.length = Math.min(opened.length, MOST_OPENED);
  return setup;
}

/** The answer to a question, or why there is none; in a worker and in the page alike. */
export async function answer(
  { question, setups, given, units, uncalibrated, dated }: Asked,
  progress?: (label: string, total: number) => Progress,
): Promise<Outcome> {
  try {
    const [first, ...others] = setups;
    const sessions = [
      openNamed(first, uncalibrated),
      ...others.map((each) => openNamed(each, uncalibrated)),
    ] as const;
    const wanted = {
      units,
      ...(dated === null ? {} : { sheetDated: localDay(new Date(dated)) }),
      ...(progress === undefined ? {} : { progress }),
    };
    return { report: await ask(question, sessions, given, wanted) };
  } catch (error) {
    return { failure: wordsOf(error), draft: error instanceof ContradictionError };
  }
}

function wordsOf(error: unknown): string {
  if (error instanceof QuestionError) return error.said(optionLabel);
  if (error instanceof NumericalError) return failureWords(error, optionLabel);
  if (error instanceof SetupError)
    return `The setup has ${error.problems.length === 1 ? 'a problem' : `${error.problems.length} problems`}.`;
  return error instanceof Error ? error.message : String(error);
}
