import { optionalText, rangeIn, stepIn, text } from '../asked/option.ts';
import { STANDING_OPTIONS } from '../asked/place-options.ts';
import { question as asked } from '../asked/question.ts';

export const question = asked({
  name: 'slope',
  purpose:
    'Uphill and downhill: the level mark to set by range and angle, what the cosine rule gets wrong, and a level ' +
    'not square to the shot.',
  options: {
    from: rangeIn(20, 'nearest range along the line of sight'),
    to: rangeIn(80, 'farthest range'),
    every: stepIn(10, 'step of the rows'),
    steepest: text('angle', '40 deg', 'steepest slope, up and down'),
    angleStep: text('angle', '10 deg', 'step of the slopes'),
    thirdAxis: text('angle', '1 deg', 'how far the right end of the level points ahead of its left'),
    stand: optionalText(
      'heights',
      'height of a stand in a tree above the ground, or several, "15 ft, 20 ft": what to set or hold from there',
    ),
    standTo: rangeIn(40, 'farthest distance from a stand'),
    spotHeight: text('height', '2.5 ft', "height above the ground of the spot aimed at: a deer's chest"),
    ...STANDING_OPTIONS,
  },
  examples: [
    ['from 20 ft up in a tree', 'setup.yaml --stand 20ft'],
    ['the cut table for the pocket', 'setup.yaml'],
    ['gentle slopes, further out', 'setup.yaml --to "100 yd" --steepest "15 deg" --angle-step "5 deg"'],
  ],
});
