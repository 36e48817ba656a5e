import { describe, expect, it } from 'vitest';
import { SetupError } from '../../../../src/setup/problem.ts';
import { readSetup } from '../../../../src/setup/read.ts';
import { EXAMPLE, SMALLEST } from '../example-text.ts';
import { messagesOf, problemsOf } from '../problems-of.ts';

describe('a text that is no setup is a SetupError', () => {
  it.each([
    ['an empty file', '', 'the file is empty'],
    ['blank lines', '\n  \n', 'the file is empty'],
    ['comments alone', '# bow:\n', 'the file is empty'],
    [
      'lines that end as on old computers',
      '# A bow\rbow:\r  peep_height: 4.6 in\r',
      'its line ends are those of old computers',
    ],
    ['a list at the top', '- bow\n- arrow\n', 'the file begins with a list'],
    ['a single word', 'bow\n', 'the file is a single value'],
    ['bytes of another kind of file', '\u0089PNG\r\n\u001a\n\0\0\0', 'the file is not a text'],
    ['text in another encoding', `${SMALLEST}title: \ufffd`, 'the file is not a text'],
    ['a file far too long', `${SMALLEST}${'# x\n'.repeat(70_000)}`, 'the file is too long'],
    ['brackets inside brackets', '['.repeat(100_000), 'too deep'],
    ['braces inside braces', '{a: '.repeat(50_000), 'too deep'],
    [
      'sections inside sections',
      Array.from({ length: 400 }, (_, i) => `${' '.repeat(i)}a:`).join('\n'),
      'too deep',
    ],
  ])('%s', (_, text, reason) => {
    const start = process.cpuUsage();
    expect(messagesOf(text).join('\n')).toContain(reason);
    const { user, system } = process.cpuUsage(start);
    // A wrong file that is thought about for seconds looks like a hang. Quiet, the worst of these takes half a processor second;
    // other work on the machine has made it six times that.
    expect((user + system) / 1e6).toBeLessThan(4 /* s */);
  });

  it.each([
    ['a tab in front', 'bow:\n\tpeep_height: 4.6 in\n', 2, 'Write two spaces instead of each tab'],
    ['an open quotation mark', `${SMALLEST}title: "Ridge\n`, 5, 'Close it'],
    ['an open brace', 'bow: { peep_height: 4.6 in\narrow: {}\n', 2, 'Close the bracket'],
    ['a wrong indent', 'bow:\n    peep_height: 4.6 in\n  hand: right\n', 3, 'as many spaces in front'],
    ['a second colon', `${SMALLEST}title: shot low: wind\n`, 5, 'in quotation marks'],
    ['a second document', `${SMALLEST}---\nbow: {}\n`, 5, 'Remove the line "---"'],
    ['text after a quotation', `${SMALLEST}title: "29" in\n`, 5, 'inside quotation marks'],
  ])('%s, told in plain words with its line', (_, text, line, write) => {
    const [problem] = problemsOf(text).filter((each) => each.line === line);
    expect(problem?.message).toContain(write);
    expect(problem?.message).not.toMatch(/YAML|token|scalar|flow|implicit/);
  });

  it('whose faults above the first unreadable line are told as well, and none below', () => {
    const text = 'bow:\n  peep_height: 46 in\n\thand: right\nsight:\n  peep_to_pin: 330 in\n';
    expect(problemsOf(text).map(({ line }) => line)).toEqual([2, 3]);
  });
});

describe('what YAML allows and a setup does not', () => {
  it.each([
    ['a key twice', `${SMALLEST}bow: { peep_height: 4.5 in }\n`, 'bow', 5, '"bow" is given twice'],
    ['an alias', `${SMALLEST}title: &a x\neye_height: *a\n`, 'eye_height', 6, 'points to another place'],
    ['an alias to nothing', `${SMALLEST}title: *nope\n`, 'title', 5, 'points to another place'],
    ['a list as a key', `${SMALLEST}? [a, b]\n: 1\n`, '', 5, 'a key that is not a word'],
    ['a number as a key', `${SMALLEST}7: 1\n`, '7', 5, 'there is no key "7"'],
    ['no key before the colon', `${SMALLEST}: 1\n`, '', 5, 'a key that is not a word'],
    ['a merge', `${SMALLEST}<<: 1\n`, '<<', 5, 'there is no key "<<"'],
  ])('%s', (_, text, path, line, reason) => {
    const problems = problemsOf(text);
    expect(problems.map((problem) => [problem.path, problem.line])).toEqual([[path, line]]);
    expect(problems[0]?.message).toContain(reason);
  });

  it('a bomb of aliases does not go off', () => {
    const levels = Array.from({ length: 25 }, (_, i) => `a${i + 1}: &a${i + 1} [*a${i}, *a${i}]`);
    expect(() => readSetup(`a0: &a0 x\n${levels.join('\n')}\n`, 'setup.yaml')).toThrow(SetupError);
  });

  it('numbers of other notations stay texts', () => {
    expect(messagesOf(SMALLEST.replace('452 gr', '0x1F')).join()).toContain('"0x1F"');
    expect(messagesOf(SMALLEST.replace('452 gr', '.inf')).join()).toContain('".inf" is not a finite number');
    expect(messagesOf(SMALLEST.replace('452 gr', '~')).join()).toContain('arrow.mass');
  });
});

it('positions count lines ended by carriage returns too', () => {
  const [problem] = problemsOf(EXAMPLE.replace('452 gr ', '452 yd ').replaceAll('\n', '\r\n'));
  expect([problem?.line, problem?.column]).toEqual([10, 9]);
});
