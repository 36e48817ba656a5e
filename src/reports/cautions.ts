import { massPerDraw, RATING_MASS_PER_DRAW } from '../bow/mass-per-draw.ts';
import { carry } from '../flight/carry.ts';
import { formatQuantity, fromSi } from '../quantities/format.ts';
import { si } from '../quantities/quantity.ts';
import type { Block } from './report.ts';
import type { Session } from './session.ts';

/** Mass per draw weight as the trade says it, gr/lb. */
export const grainsPerPound = (perDraw: number): number => fromSi(perDraw, 'gr') / fromSi(1, 'lbf');

/** Whether an arrow is lighter for its bow than the one bows are rated with. */
export const isLight = (perDraw: number): boolean => perDraw < RATING_MASS_PER_DRAW;

/** What a light arrow can do, for any heading. */
export const lightArrow = (): string =>
  `below about ${grainsPerPound(RATING_MASS_PER_DRAW).toFixed(0)} gr of arrow per pound of draw weight a bow can be damaged and an archer hurt. Keep to the bow maker's minimum, and ask a qualified bow technician.`;

/**
 * The backstop, and how far the arrow could go without one: with the faster start and the lesser drag of what was measured and what the
 * marks make of it, so that marks that mislead do not shorten it.
 */
export function carryCaution({ assembly, calibration, units }: Session): string {
  const [measured, { conditions, launchSpeed }] = [assembly.rig, calibration.rig];
  const dragScale = Math.min(conditions.arrow.dragScale, measured.conditions.arrow.dragScale);
  const { distance } = carry(
    { ...conditions, arrow: { ...conditions.arrow, dragScale } },
    si(Math.max(launchSpeed, measured.launchSpeed)),
  );
  return `Caution: this arrow could carry ${formatQuantity(distance, units.range, 0)}. Every shot needs a backstop and a clear way to it; never shoot over a crest.`;
}

/** A light arrow can wreck a bow; empty when the draw weight is not known or the arrow is heavy enough. */
function lightArrowCaution({ setup, assembly }: Session): string {
  const weight = setup.bow.peak_draw_weight;
  if (weight === undefined) return '';
  const perDraw = massPerDraw(assembly.arrow.flying.mass, weight);
  return isLight(perDraw) ? `Caution: ${grainsPerPound(perDraw).toFixed(1)} gr/lb: ${lightArrow()}` : '';
}

/** An arrow that does not right itself; empty for one that does, or when the file names no parts. */
function stabilityCaution({ assembly }: Session): string {
  const { staticMargin } = assembly.arrow;
  if (staticMargin === null || staticMargin > 0) return '';
  return 'Caution: the centre of pressure of this arrow is not behind its balance point, so it does not fly point first by itself. The numbers here are those of a point of its weight and drag; do not shoot it at any distance.';
}

/** Every caution that goes with a shot, each on a line of its own. */
export const shotCautions = (session: Session): string =>
  [stabilityCaution(session), lightArrowCaution(session), carryCaution(session)]
    .filter((line) => line !== '')
    .join('\n');

/** The cautions as blocks of a report. */
export const cautionBlocks = (session: Session): readonly Block[] =>
  shotCautions(session)
    .split('\n')
    .map((line) => ({ kind: 'caution', text: line.replace(/^Caution: /, '') }));

/** The cautions line by line without their label, for a document that has a heading for them. */
export const unlabelled = (cautions: string): readonly string[] =>
  cautions
    .split('\n')
    .map((line) => line.replace(/^Caution: (.)/, (_, first: string) => first.toUpperCase()));
