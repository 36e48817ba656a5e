import { capHeight, textWidth } from '../page/text-measure.ts';
import type { SheetRule } from './sheet-rule.ts';
import { weightOf } from './sheet-rule.ts';
import type { Branch } from './tape-content.ts';
import type { StripLabel } from './tape-strip.ts';

/** A strip's place on its page, and the rule it is drawn by. */
export interface StripPlace {
  readonly x: number;
  readonly y: number;
  readonly rule: SheetRule;
}

const standsOnLeft = (branch: Branch, { rule }: StripPlace): boolean =>
  (rule.form.ticks === 'left') === (branch === 'far');

/** The x of a point `inward` mm from the edge that a branch's ticks stand on. */
export const across = (inward: number, branch: Branch, place: StripPlace): number =>
  place.x + (standsOnLeft(branch, place) ? inward : place.rule.form.width - inward);

export const anchorAt = (branch: Branch, place: StripPlace) =>
  standsOnLeft(branch, place) ? 'start' : 'end';

/** Turn of words along the strip, their tops towards the ticks. */
export const turnAlong = ({ rule }: StripPlace): number => (rule.form.ticks === 'left' ? -90 : 90);

export const isSideways = (branch: Branch, { rule }: Pick<StripPlace, 'rule'>): boolean =>
  branch === 'far' && rule.form.numbers === 'sideways';

/** What a label covers: inward from the edge of its branch, and along the strip, mm. */
export function labelReach(label: StripLabel, place: Pick<StripPlace, 'rule'>) {
  const { grid } = place.rule;
  const from = label.branch === 'far' ? grid.labelFrom : grid.nearLabelFrom;
  const width = textWidth(label.text, label.size, weightOf(label.rank, label.branch));
  const height = capHeight * label.size;
  const sideways = isSideways(label.branch, place);
  const half = (sideways ? width : height) / 2;
  return {
    from,
    to: from + (sideways ? height : width),
    top: label.middle - half,
    bottom: label.middle + half,
  };
}
