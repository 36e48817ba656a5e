/** Which way vanes turn the arrow: what the words for it stand for; common practice, no source. */
const TURNS = {
  right: ['right', 'r', 'rh', 'right helical', 'right offset', 'right hand', 'clockwise', 'cw'],
  left: [
    'left',
    'l',
    'lh',
    'left helical',
    'left offset',
    'left hand',
    'anticlockwise',
    'counterclockwise',
    'ccw',
  ],
  none: ['none', 'straight', 'no', 'neutral'],
} as const;

export type Turn = keyof typeof TURNS;

/** Their other names by the word that the program writes. */
export const TURN_WORDS: Readonly<Record<Turn, readonly string[]>> = TURNS;

/** The turn that a word stands for; undefined for another word. */
export function turnMeant(text: string): Turn | undefined {
  const typed = text
    .trim()
    .toLowerCase()
    .replace(/[-_\s]+/g, ' ');
  const turned = typed.replace(/^(helical|offset) (right|left)$/, '$2 $1');
  const names: readonly Turn[] = ['right', 'left', 'none'];
  return names.find((turn) => TURN_WORDS[turn].includes(turned));
}
