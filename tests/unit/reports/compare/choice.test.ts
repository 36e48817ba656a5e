import { describe, expect, it } from 'vitest';
import { compare } from '../../../../src/advice/builds/comparison.ts';
import { displayUnits } from '../../../../src/quantities/display-units.ts';
import { choiceData, choiceWords } from '../../../../src/reports/compare/choice.ts';
import { bowWith, candidate, tallVanes, withPoint } from '../../advice/invented-candidates.ts';
import { yards } from '../../sight/invented-rig.ts';

const judged = (...others: Parameters<typeof bowWith>[0]) => ({
  comparison: compare([bowWith(others)], {
    ranges: [20, 50, 80].map(yards),
    crosswind: 4.4704,
    ring: 0.2,
  }),
  groups: [],
  session: { units: displayUnits('imperial') },
});

describe('which build to choose', () => {
  // One bow gives E = e/(1 + K/m) of its energy e: p = √(2 m E) grows with m, and a heavier arrow falls farther in its
  // longer flight.
  const found = judged(candidate('heavy point', withPoint(200)), candidate('tall vanes', tallVanes));

  it('for the most momentum is the heavier one, and for wind or a flat path nothing with more drag', () => {
    expect(choiceData(found)).toMatchObject({ flattest: [], most_momentum: ['heavy point'] });
    expect(JSON.stringify(choiceData(found))).not.toContain('tall vanes');
  });

  it('is said in one sentence with how much it gains, and what is as good as it is', () => {
    expect(choiceWords(found)).toMatch(
      /^What to choose at 80 yd: .*heavy point for the most momentum \(0\.\d+ lbf s more\).*flattest.* nothing certainly beats/,
    );
    expect(choiceWords(found).match(/\. /g)).toBeNull();
  });

  it('is none where no build can be told from the present one', () => {
    const same = judged(candidate('same point', withPoint(125)), candidate('tall vanes', tallVanes));
    const words = choiceWords(same);
    expect(words).toMatch(/^Nothing here is worth the money: at 80 yd no build is certainly better than/);
  });

  it('says nothing of groups when none was shot', () => {
    expect(choiceData(found)).toMatchObject({ smallest_group: null });
    expect(choiceWords(found)).not.toContain('group');
  });
});
