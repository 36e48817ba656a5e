import { count, PAPER, rangeIn, stepIn, text } from '../asked/option.ts';
import { PLACE_OPTIONS } from '../asked/place-options.ts';
import { question as asked } from '../asked/question.ts';

export const question = asked({
  name: 'compare',
  purpose: 'Several builds side by side: what really differs, by how much, and what cannot be told apart.',
  setups: 'several',
  setupsWhat:
    'setup files (YAML); the first is the present build, its `builds:` come next, then the other files',
  options: {
    from: rangeIn(20, 'nearest range; the shortest shot that asks for a mark'),
    to: rangeIn(80, 'farthest range; few shots at game are longer'),
    every: stepIn(20, 'step of the rows'),
    ring: text('diameter', '8 in', 'size of the target, for how far a guess of the range may be off'),
    crosswind: text('speed', '10 mph', 'wind from the side, for the drift', 'windSpeed'),
    arrows: count(
      'count',
      [0, 100_000],
      240,
      'arrows of a sorted dozen shot with each build for its group; 0 leaves groups out',
    ),
    page: PAPER,
    ...PLACE_OPTIONS,
  },
  sheet: { when: 'asked', what: 'one page to take to the shop: .pdf or .svg', example: 'sheet' },
  examples: [
    ['the builds listed in one file against its own', 'setup.yaml'],
    ['two files, as one page to print', 'now.yaml heavier.yaml --out compare.pdf'],
    ['for a 3-D course', 'setup.yaml --from "10 yd" --to "60 yd" --every "10 yd" --ring "10 in"'],
  ],
});
