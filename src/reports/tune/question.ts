import { STEPS } from '../../advice/tuning/next-step.ts';
import { PAPER, subject, textFile } from '../asked/option.ts';
import { question as asked } from '../asked/question.ts';

export const question = asked({
  name: 'tune',
  purpose:
    'A tuning evening from the nock on the serving to lines at long range: what is next and why, and what each step found.',
  options: {
    step: subject('step', STEPS, 'a step alone'),
    log: textFile('file', 'a tuning log in a file of its own, beside what the setup holds under tuning'),
    page: PAPER,
  },
  sheet: {
    when: 'asked',
    what: 'write a one-page record of the evening: .pdf or .svg',
    example: 'evening.pdf',
  },
  examples: [
    ['what to do next, and why', 'setup.yaml --log evening.yaml'],
    ['how far out the sight should sit', 'setup.yaml torque --log evening.yaml'],
    ['a page for the bow case', 'setup.yaml --log evening.yaml --out evening.pdf'],
  ],
});
