import type { SightScale } from '../sight/scale.ts';
import { travelAt } from '../sight/scale.ts';
import type { Measurement, PencilMark, ShotMark } from './measurement.ts';

/** A group shot with the sight at a place that was written down: a number of its scale, or a line on its strip. */
export type SightMark = ShotMark | PencilMark;

export const isSightMark = (shot: Measurement): shot is SightMark =>
  shot.kind === 'mark' || shot.kind === 'pencil';

/** What was written of the place: a reading, or metres on the strip from the line of the zero range. */
export const writtenOf = (mark: SightMark): number => (mark.kind === 'mark' ? mark.reading : mark.onTape);

export const withWritten = (mark: SightMark, written: number): SightMark =>
  mark.kind === 'mark' ? { ...mark, reading: written } : { ...mark, onTape: written };

/**
 * Where the pin stood for a mark, m of travel from its place at the zero range, positive down.
 *
 * @param tapeRatio travel of the strip over travel of the pin
 */
export function travelOf(scale: SightScale, mark: SightMark, tapeRatio: number): number {
  if (mark.kind === 'mark') return travelAt(scale, mark.reading);
  const line = mark.lineAt === null ? 0 : travelAt(scale, mark.lineAt);
  return line + mark.onTape / tapeRatio;
}

/** The number of a scale, or the metres on a strip, that a travel (m) from one place to another comes to. */
export const writtenPer = (scale: SightScale, { kind }: SightMark, tapeRatio: number): number =>
  kind === 'mark' ? scale.direction / scale.travelPerUnit : tapeRatio;
