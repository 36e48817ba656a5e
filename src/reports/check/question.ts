import { question as asked } from '../asked/question.ts';

export const question = asked({
  name: 'check',
  purpose: 'Read a setup file, name every problem in it with its line, and show what the tool makes of it.',
  options: {},
  hasRows: false,
  examples: [
    ['every problem at once, with line and column', 'setup.yaml'],
    ['the arrow part by part, its drag term by term', 'examples/mountain-hunt/setup.yaml'],
  ],
});
