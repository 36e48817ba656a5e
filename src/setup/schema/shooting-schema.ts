import * as z from 'zod/mini';
import { choice, freeText } from './leaf.ts';
import { optional, required } from './section.ts';

/** A group shot at one range with one setting of the sight. */
export const markSchema = z.strictObject({
  ...required('marks', ['range']),
  ...optional('marks', ['reading', 'arrows', 'group', 'lateral', 'vertical', 'cant']),
  turn: z.exactOptional(choice(['right', 'left'])),
  note: z.exactOptional(freeText),
});

/** A chronograph set up down range. */
export const speedSchema = z.strictObject(required('speeds', ['range', 'speed']));

/** How far below the aim an arrow hits that is shot further than the mark that is set. */
export const dropSchema = z.strictObject(required('drops', ['aimed_with', 'range', 'drop']));
