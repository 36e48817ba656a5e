import type { ArrowParts } from '../parts/parts.ts';
import { nockLength } from '../parts/pieces.ts';
import type { LongBody } from './boundary-layer.ts';

/** Tip to groove, as the layer of air sees an arrow; a laminar layer ends where the vanes begin. */
export function longBody({ point, shaft, nock, vanes }: ArrowParts): LongBody {
  const length = point.length + shaft.length + nockLength(nock);
  const trip = vanes === undefined ? length : length - vanes.fromNock - vanes.rootChord;
  return { length, diameter: shaft.outerDiameter, trip };
}
