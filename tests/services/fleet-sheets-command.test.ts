// Sheets of the whole fleet by the command without a window: each kind, a line for each file, and marks only where they are noted.
import { spawnSync } from 'node:child_process';
import { cpSync, existsSync, mkdtempSync, readdirSync, readFileSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { findPrinted } from '../../app/storage/printed-register.ts';
import { flatText } from '../helpers/read-pdf.ts';

const project = new URL('../..', import.meta.url).pathname;
const marked = /mark (\w{3}) (\w{3})/;
let folder = '';
let fleet = '';

function run(...words: string[]) {
  const command = ['--import', 'tsx', join(project, 'app/sheets-command.ts'), '--fleet', fleet, ...words];
  const { status, stdout, stderr } = spawnSync(process.execPath, command, { cwd: project, encoding: 'utf8' });
  return { status, lines: stdout.split('\n').filter((line) => line !== ''), errors: stderr };
}

beforeAll(() => {
  folder = mkdtempSync(join(tmpdir(), 'lotwright-fleet-sheets-'));
  fleet = join(folder, 'fleet');
  cpSync(join(project, 'sample-fleet/current'), fleet, { recursive: true });
});
afterAll(() => rmSync(folder, { recursive: true, force: true }));

describe('the sheets command', () => {
  it('prints every list of the fleet with a line each, without a mark that nobody could look up', () => {
    const out = join(folder, 'lists');
    const { status, lines, errors } = run('--out', out, '--kind', 'fleet');
    expect(errors).toBe('');
    expect(status).toBe(0);
    const names = readdirSync(out).sort();
    expect(names.map((name) => name.replace(/-\d{4}-\d\d-\d\d\.pdf$/, ''))).toEqual([
      'fleet-list',
      'money-summary',
      'parts-list',
    ]);
    for (const name of names) {
      expect(lines.join('\n')).toMatch(new RegExp(`${name}: \\d+ pages?`));
      expect(flatText(readFileSync(join(out, name)))).not.toMatch(marked);
    }
    expect(existsSync(join(fleet, 'sheets'))).toBe(false);
  }, 60_000);

  it('notes the sheets where that is asked for, so that their marks are found', async () => {
    const out = join(folder, 'noted');
    const { status, lines } = run('--out', out, '--kind', 'fleet-list', '--note', '--paper', 'letter');
    expect(status).toBe(0);
    const path = lines[0]?.replace(/: \d+ pages?$/, '') ?? '';
    const [, first = '', second = ''] = marked.exec(flatText(readFileSync(path))) ?? [];
    const found = await findPrinted(join(fleet, 'sheets'), `${first}${second}`);
    expect(found).toMatchObject({ ok: true, value: [{ kind: 'fleet-list', vehicleId: null }] });
  }, 60_000);

  it('does not know a kind that is none', () => {
    const { status, errors } = run('--out', join(folder, 'none'), '--kind', 'fleets');
    expect(status).toBe(2);
    expect(errors).toContain('There is no kind of sheet called “fleets”.');
  }, 60_000);
});
