import type { Step } from '../../advice/tuning/next-step.ts';

/** What is said of a step before anything is logged for it. */
interface StepWords {
  /** What it decides, and why it stands where it does in the order. */
  readonly reason: string;
  /** How to do it, with an entry for the log. */
  readonly how: string;
  readonly cautions: readonly string[];
}

const BACKSTOP =
  'a moved rest moves the whole group by inches: check the first arrow close, and use a large backstop.';

export const STEP_WORDS: Readonly<Record<Step, StepWords>> = {
  nock: {
    reason:
      'A nock that does not fit can let go at full draw, and all else changes with the serving; so it comes first.',
    how:
      'Measure the serving at three places about the nock with the flat jaws of a caliper, turned a quarter each time:\n' +
      '- { date: 2026-04-18, step: nock, serving: [0.1095 in, 0.110 in, 0.109 in] }',
    cautions: [
      'a nock that cracks or slips off is a dry-fire: broken limbs, injury. Flex each nock and discard doubtful ones.',
    ],
  },
  draw: {
    reason:
      'The draw length sets the energy, the peep and every distance on the bow; so before anything is shot.',
    how:
      'Measure the draw from the string to the deepest point of the grip, and add 1.75 in:\n' +
      '- { date: 2026-04-18, step: draw, draw_length: 29.25 in, match: 29 in }',
    cautions: ['modules and timing are set in a press, by a bow shop. Never without a press.'],
  },
  paper: {
    reason: 'It shows the coarse fault of how the arrow leaves, which would hide all that follows.',
    how:
      'Shoot through paper at 4 ft and at 12 ft from the grip; the two together tell a crooked start from a turning one:\n' +
      '- { date: 2026-04-18, step: paper, distance: 4 ft, nock_right: -0.4 in, nock_high: 0.1 in }',
    cautions: ['never shoot a bare broadhead. Put a backstop behind the paper.'],
  },
  start: {
    reason: 'It makes the first long shot hit the stop.',
    how: 'Centre the arrow at the short range below, then step out:\n- { date: 2026-04-18, step: start, far: 50 yd }',
    cautions: [
      'have a backstop 2 ft above and below the mark for the first long shot, and step out by 20, 30 and 40 yd.',
    ],
  },
  torque: {
    reason: 'It decides how far out the sight sits, and moving it changes every mark; so before the marks.',
    how:
      'At 40 to 60 yd shoot three arrows with the front of the bow turned gently left and three turned right, then the same ' +
      'with the sight 2 in farther in or out:\n- { date: 2026-04-18, step: torque, range: 50 yd, extension: 6.5 in, ' +
      'left: [1.5 in, 3.3 in, 2.9 in], right: [-2.4 in, -4.5 in, -1.6 in] }',
    cautions: [
      'turn the bow gently: a hard twist can throw the string off the cams. Stop if a string or a cable rubs. The ' +
        'backstop must be wide enough for the misses.',
    ],
  },
  arrows: {
    reason: 'Crooked arrows spoil bare shafts and lines; so they are sorted out before.',
    how:
      'Weigh every arrow, and turn it to see how far its middle runs out:\n- { date: 2026-04-18, step: arrows, range: 50 yd, ' +
      'set: 6, measured: [{ mass: 449.1 gr, runout: 0.002 in }, { mass: 450.3 gr, runout: 0.001 in }] }',
    cautions: ['a shaft that is cracked, dented or bent is not shot at all.'],
  },
  bare: {
    reason: 'Bare shafts show ten times smaller faults of the launch than lines do; so before the lines.',
    how:
      'Shoot three bare shafts and three fletched arrows at 30 yd, after 10 and 20 yd:\n- { date: 2026-04-18, step: bare, ' +
      'range: 30 yd, rest_right: 0 mm, fletched: { arrows: 3, lateral: 0 in, vertical: 0 in }, bare: { arrows: 3, ' +
      'lateral: 2 in, vertical: 0.5 in } }',
    cautions: [
      'never shoot a bare broadhead. Bare shafts may glance: stand close first, at 10, then 20, then 30 yd, and use a ' +
        'soft stop. A bare shaft heavier or lighter than the fletched arrow tells less.',
    ],
  },
  line: {
    reason: 'The spread at long range has the last word on the rest, if it can be had at all.',
    how:
      'Shoot at a long upright line with the rest well out to either side, many arrows at few places:\n' +
      '- { date: 2026-04-18, step: line, range: 60 yd, line: vertical, rest_right: -1.6 mm, ' +
      'off_line: [1.9 in, -4.0 in, -2.7 in] }',
    cautions: [BACKSTOP],
  },
  level: {
    reason: 'An axis that is off sends arrows aside at long range and on slopes.',
    how:
      'Hang a plumb line and run the pin up beside it, or tip the bow in a vice:\n' +
      '- { date: 2026-04-18, step: level, plumb_run: 2 in, plumb_aside: 0.02 in }',
    cautions: ['a bow in a vice must not be drawn.'],
  },
  marks: {
    reason: 'They are what all of it was for, and every change before would have moved them.',
    how: 'Shoot groups at 20, 40 and 60 yd, write them under "marks:", and ask fit which range to shoot next.',
    cautions: ['every shot needs a backstop and a clear way to it.'],
  },
};
