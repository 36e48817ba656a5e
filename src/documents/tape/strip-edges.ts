import { capHeight, textWidth } from '../page/text-measure.ts';
import { type SheetRule, weightOf } from './sheet-rule.ts';
import type { Branch } from './tape-content.ts';
import type { StripLabel } from './tape-strip.ts';

const standsOnLeft = (branch: Branch, { form }: SheetRule): boolean =>
  (form.ticks === 'left') === (branch === 'far');

/** The x of a point `inward` mm from the edge that a branch's ticks stand on, from the left edge of the strip. */
export const across = (inward: number, branch: Branch, rule: SheetRule): number =>
  standsOnLeft(branch, rule) ? inward : rule.form.width - inward;

export const anchorAt = (branch: Branch, rule: SheetRule) => (standsOnLeft(branch, rule) ? 'start' : 'end');

/** Turn of words along the strip, their tops towards the ticks. */
export const turnAlong = ({ form }: SheetRule): number => (form.ticks === 'left' ? -90 : 90);

export const isSideways = (branch: Branch, { form }: SheetRule): boolean =>
  branch === 'far' && form.numbers === 'sideways';

/** What a label covers: inward from the edge of its branch, and along the strip, mm. */
export function labelReach(label: StripLabel, rule: SheetRule) {
  const { grid } = rule;
  const from = label.branch === 'far' ? grid.labelFrom : grid.nearLabelFrom;
  const width = textWidth(label.text, label.size, weightOf(label.rank, label.branch));
  const height = capHeight * label.size;
  const sideways = isSideways(label.branch, rule);
  const half = (sideways ? width : height) / 2;
  return {
    from,
    to: from + (sideways ? height : width),
    top: label.middle - half,
    bottom: label.middle + half,
  };
}
