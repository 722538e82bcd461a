// Names by which one finds one's way: kebab-case, one thing a file, no drawers for everything, a first line that says what for.
import { describe, expect, it } from 'vitest';
import { filesBelow, readSource } from './source-files.ts';

const code = ['app', 'renderer', 'tests'].flatMap((folder) => filesBelow(folder, /\.(tsx?|mjs|css)$/));

/** Names of what anything could be put into. */
const drawers = /(^|[/-])(utils?|helpers?|misc|common|stuff|lib|shared)\.(tsx?|mjs)$/;
/** Words used by several screens are what this one file is for. */
const noDrawers = ['renderer/text/common.ts'];

describe('names', () => {
  it('are kebab-case, folders too', () => {
    const kebab = /^([a-z0-9]+(-[a-z0-9]+)*\/)*[a-z0-9]+(-[a-z0-9]+)*(\.property)?(\.(test|spec|config|d))?\.[a-z]+$/;
    expect(code.filter((file) => !kebab.test(file))).toEqual([]);
  });

  it('tell what is in the file: no drawer for anything', () => {
    expect(code.filter((file) => drawers.test(file) && !noDrawers.includes(file))).toEqual([]);
  });

  it('are those of the files themselves: no barrel that only passes others on', () => {
    expect(code.filter((file) => /(^|\/)index\.(tsx?|mjs)$/.test(file))).toEqual([]);
    const barrels = code.filter((file) => {
      const statements = readSource(file)
        .replace(/\/\*[\s\S]*?\*\/|\/\/.*$/gm, '')
        .split(';')
        .map((statement) => statement.trim())
        .filter((statement) => statement !== '');
      return (
        /\.tsx?$/.test(file) &&
        statements.length > 0 &&
        statements.every((one) => /^export\b[^=({]*(\{[^}]*\})?\s*from\b/.test(one))
      );
    });
    expect(barrels, 'Import from the file that has the thing.').toEqual([]);
  });

  it('are said at every import: no default exports', () => {
    const nameless = code
      .filter((file) => /\.tsx?$/.test(file) && !file.endsWith('.config.ts'))
      .filter((file) => {
        return /^export default\b|\bas default\b/m.test(readSource(file));
      });
    expect(nameless).toEqual([]);
  });
});

describe('the first line', () => {
  it('of every file says what the file is for', () => {
    const says = /^(#!.*\n)?(\/\/ ?|\/\*+\s*)\S.{9,}/;
    const silent = code.filter((file) => !says.test(readSource(file)));
    expect(silent, 'Begin the file with one to three lines: what it is for, and what it must not do.').toEqual([]);
  });
});
