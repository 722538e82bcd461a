// No source file grows beyond what one can keep in mind.
import { describe, expect, it } from 'vitest';
import { filesBelow, readSource } from './source-files.ts';

const mostLines = 300;
/** Files that are longer for a reason, with the reason. */
const longer: Readonly<Record<string, string>> = {
  'app/domain/programming/general-pack-rules.ts':
    'One table of order rules, each with its reason and source; data without logic.',
};

const sources = [...filesBelow('app', /\.(tsx?|mjs|css)$/), ...filesBelow('renderer', /\.(tsx?|css|html)$/)];

function linesOf(file: string): number {
  return readSource(file).trimEnd().split('\n').length;
}

describe('source files', () => {
  it(`have no more than ${mostLines} lines`, () => {
    const long = sources.filter((file) => linesOf(file) > mostLines && !(file in longer));
    const told = long.map((file) => `${file}: ${linesOf(file)} lines`);
    expect(told, 'Split the file by what it does, or give the reason in this test.').toEqual([]);
    expect(sources.length).toBeGreaterThan(100);
  });

  it('are excused only as long as they are longer', () => {
    const stale = Object.keys(longer).filter((file) => !sources.includes(file) || linesOf(file) <= mostLines);
    expect(stale, 'Take these out of the list.').toEqual([]);
  });
});
