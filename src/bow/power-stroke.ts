import { INCH } from '../quantities/exact.ts';
import { type Metres, si } from '../quantities/quantity.ts';

/** The draw length counts to the deepest point of the grip, plus this, m. @source the trade's definition, as in ASTM F1544-11 */
const GRIP_TO_DRAW_LENGTH = 1.75 * INCH;

/**
 * The way of the nock from full draw to the string's rest: the draw length to the grip, less the brace height, m.
 *
 * @param drawLength by the trade's definition, m
 * @param braceHeight from the grip to the string at rest, m
 * @returns 0 or less where the two contradict each other, which a reader of a setup refuses
 */
export const powerStroke = (drawLength: number, braceHeight: number): Metres =>
  si(drawLength - GRIP_TO_DRAW_LENGTH - braceHeight);
