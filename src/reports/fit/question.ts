import { PAPER, rangeIn } from '../asked/option.ts';
import { question as asked } from '../asked/question.ts';

export const question = asked({
  name: 'fit',
  purpose: 'Fit the model to your shot marks: what they decide, what they do not, and where to shoot next.',
  options: {
    from: rangeIn(20, 'nearest range the tape is for; most sights are zeroed there'),
    to: rangeIn(100, 'farthest range the tape is for; name the one you shoot'),
    page: PAPER,
  },
  sheet: {
    when: 'asked',
    what: 'the same as one page to keep or to show: .pdf or .svg',
    example: 'report',
  },
  examples: [
    ['values, errors, residuals and the next range', 'setup.yaml'],
    ['the same as one page', 'setup.yaml --out report.pdf'],
    ['for a 3-D course that ends at 60 yards', 'setup.yaml --to "60 yd"'],
  ],
});
