import { expect, it } from 'vitest';
import { changed, newHistory, redone, settled, undone } from '../../../src/page/text/history.ts';

const typed = (...texts: readonly string[]) =>
  texts.reduce((history, text) => changed(history, text, 'launch.speed'), newHistory(''));

it('the letters of one number are one step back', () => {
  const history = typed('2', '28', '283');
  expect(undone(history).text).toBe('');
  expect(redone(undone(history)).text).toBe('283');
});

it('a field that was left, and another key, begin a step of their own', () => {
  expect(undone(changed(settled(typed('283')), '285', 'launch.speed')).text).toBe('283');
  expect(undone(changed(typed('283'), '283, 460', 'arrow.mass')).text).toBe('283');
});

it('what was undone is gone once something else is written', () =>
  expect(redone(changed(undone(typed('283')), '290', null)).text).toBe('290'));

it('nothing to undo, nothing changes', () => expect(undone(newHistory('a')).text).toBe('a'));
