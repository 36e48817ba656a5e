import { QUESTIONS, type QuestionName } from '../../reports/questions.ts';
import type { Desk } from '../screen/desk.ts';
import { element } from '../show/element.ts';
import { panel } from './panel.ts';
import { inOrder } from './question-titles.ts';
import { tryOut } from './try-out.ts';

const names = Object.keys(QUESTIONS).filter((name): name is QuestionName => name in QUESTIONS);

/** Every question as a panel; what is folded is not asked. */
export function answersArea(desk: Desk) {
  const panels = inOrder(names).map((name) => ({ name, ...panel(desk, name) }));
  const trial = tryOut(desk);
  return {
    view: element(
      'section',
      { class: 'answers', 'aria-label': 'Answers' },
      trial.view,
      panels.map(({ view }) => view),
    ),
    refresh: () => {
      trial.refresh();
      for (const each of panels) each.refresh();
    },
    open: (name: string) => panels.find((each) => each.name === name)?.open(),
  };
}
