import type { QuestionName } from '../../quillpath.ts';

/** What a question is called on the page. A question without an entry here goes by its own name. */
const TITLES: Readonly<Record<string, string>> = {
  marks: 'Marks',
  fit: 'What your shots say',
  tape: 'Tape',
  card: 'Card to take along',
  fly: 'Path of the arrow',
  cant: 'Lean',
  slope: 'Uphill and downhill',
  misjudge: 'A range misjudged',
  wind: 'Wind and other air',
  swing: 'Swing and paper',
  broadhead: 'Broadhead',
  scatter: 'Groups',
  compare: 'Which arrow',
  vary: 'One number swept',
  check: 'What was read',
  tune: 'Tuning',
  next: 'What to do next',
  pins: 'Pins',
  move: 'A sight that was moved',
};

/** The order of a person with a new bow; others follow. */
const ORDER: readonly string[] = ['marks', 'tape', 'fit', 'fly', 'wind', 'cant', 'slope', 'misjudge'];
const LAST: readonly string[] = ['vary', 'check'];

export const questionTitle = (name: QuestionName): string =>
  TITLES[name] ?? name.slice(0, 1).toUpperCase() + name.slice(1);

export function inOrder(names: readonly QuestionName[]): readonly QuestionName[] {
  const rank = (name: string): number => {
    const first = ORDER.indexOf(name);
    if (first !== -1) return first;
    return ORDER.length + (LAST.includes(name) ? 1 : 0);
  };
  return names.toSorted((a, b) => rank(a) - rank(b));
}
