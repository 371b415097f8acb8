/**
 * Answers JSON `[[cell, value], ...]` from standard input with what feelin makes of each: true, false, null, or
 * `error` where it cannot parse the cell. A process of its own, because feelin is an ES module and tests are not.
 */
import { evaluate, unaryTest } from 'feelin';

/** JSON has no days: `{ day: '2026-05-01' }` stands for one. */
const valueOf = (value) => (typeof value === 'object' ? evaluate(`date("${value.day}")`).value : value);

const answered = ([cell, value]) => {
  try {
    return unaryTest(cell, { '?': valueOf(value) }).value;
  } catch {
    return 'error';
  }
};

let text = '';
for await (const chunk of process.stdin) text += chunk;
process.stdout.write(JSON.stringify(JSON.parse(text).map(answered)));
