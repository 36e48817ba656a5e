/** What is not on the first screen comes with the second script. */
export { answersArea } from '../answers/answers-area.ts';
export { keepArea } from '../keep/keep-area.ts';
export { atRange } from '../range/at-range.ts';
