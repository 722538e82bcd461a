// What the repository holds: at the top only what belongs there, and nowhere a path or host of somebody's machine.
import { execFileSync } from 'node:child_process';
import { readFileSync } from 'node:fs';
import path from 'node:path';
import { describe, expect, it } from 'vitest';
import { projectFolder } from './source-files.ts';

const allowedAtTop = [
  '.biome.json',
  '.ci',
  '.gitattributes',
  '.gitignore',
  '.npmrc',
  'DEVELOPERS.md',
  'LICENSE',
  'README.md',
  'app',
  'electron-builder.yml',
  'package-lock.json',
  'package.json',
  'renderer',
  'sample-fleet',
  'tests',
  'tsconfig.json',
];

const tracked = execFileSync('git', ['ls-files', '-z', '--cached', '--others', '--exclude-standard'], {
  cwd: projectFolder,
  encoding: 'utf8',
})
  .split('\0')
  .filter((file) => file !== '');

const isText = /\.(tsx?|mjs|css|html|json|md|ya?ml|txt|svg)$|^\.|^LICENSE$|^\.ci\//;

/** Written so that this file does not find itself. */
const machine = [
  { what: 'a folder of one machine', pattern: /(?<![\w.])\/(?:work|root|tmp)\/[\w.]/ },
  { what: 'somebody’s own folder', pattern: /(?:\/home\/|\/Users\/|\bC:\\{1,2}Users\\{1,2})(?!ann\b)\w/i },
  { what: 'a package registry', pattern: /https?:\/\/[\w.-]*(?:registry|npmjs|nexus|artifactory|verdaccio)[\w.-]*/i },
  {
    what: 'a host of a local network',
    pattern: /https?:\/\/(?:localhost|127\.|10\.|192\.168\.|[\w-]+\.(?:local|internal|lan))/i,
  },
];

describe('the repository', () => {
  it('has at the top only what belongs there', () => {
    const top = new Set(tracked.map((file) => file.split('/')[0] ?? ''));
    expect([...top].filter((name) => !allowedAtTop.includes(name))).toEqual([]);
    expect(tracked.length).toBeGreaterThan(100);
  });

  it('tracks nothing that is made or fetched', () => {
    expect(
      tracked.filter((file) =>
        /(^|\/)(node_modules|built|\.cache|test-results)\/|\.(log|map|pdf|zip|exe|deb)$/.test(file),
      ),
    ).toEqual([]);
  });

  it.each(machine)('names nowhere $what', ({ pattern }) => {
    const found = tracked
      .filter((file) => isText.test(file))
      .flatMap((file) => {
        const lines = readFileSync(path.join(projectFolder, file), 'utf8').split('\n');
        return lines.flatMap((line, index) => (pattern.test(line) ? [`${file}:${index + 1}`] : []));
      });
    expect(found).toEqual([]);
  });
});
