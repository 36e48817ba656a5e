import * as z from 'zod/mini';
import { KEY_MEANINGS } from './key-meaning.ts';
import { choice, freeText, LONGEST_NOTE } from './leaf.ts';
import { meaningAt, quantityAt } from './quantity-leaf.ts';
import { optional, required } from './section.ts';
import { TURN_WORDS } from './turn-words.ts';

/** Which of the measurements were made on one day: they share its bow, its air and its wind. */
const date = z.exactOptional(
  freeText({
    what: 'day or evening it was shot on, the same text for all of one day',
    otherwise: 'one day on each side of the widest gap in range',
  }),
);

/** Every arrow of a group: pairs of right and high. */
const hits = z.array(z.array(quantityAt('marks.hits'))).register(KEY_MEANINGS, meaningAt('marks.hits'));

/** A group shot at one range with one setting of the sight. */
const mark = z.strictObject({
  ...required('marks', ['range']),
  ...optional('marks', ['reading', 'on_tape', 'pin', 'arrows', 'group', 'lateral', 'vertical', 'cant']),
  hits: z.exactOptional(hits),
  turn: z.exactOptional(
    choice(
      ['right', 'left'],
      {
        what: 'turn of the vanes of these arrows, where it differs',
        otherwise: 'as `arrow.parts.vanes.turn`',
      },
      TURN_WORDS,
    ),
  ),
  note: z.exactOptional(freeText({ what: 'a note for your own record' }, LONGEST_NOTE)),
  date,
});

export const marksSchema = z
  .array(mark)
  .register(KEY_MEANINGS, { what: 'groups, each shot at one range with one setting of the sight' });

export const speedsSchema = z
  .array(z.strictObject({ ...required('speeds', ['range', 'speed']), date }))
  .register(KEY_MEANINGS, { what: 'readings of a chronograph set up down range' });

export const dropsSchema = z
  .array(z.strictObject({ ...required('drops', ['aimed_with', 'range', 'drop']), date }))
  .register(KEY_MEANINGS, {
    what: 'arrows shot farther than the mark that was set, and how far below the aim they hit',
  });
