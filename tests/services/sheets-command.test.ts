// The command without a window, run as a program of its own on fleets in real folders.
import { spawnSync } from 'node:child_process';
import { mkdirSync, mkdtempSync, readdirSync, readFileSync, rmSync, statSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { shortOf } from '../../app/domain/sheets/request-reference.ts';
import type { Vehicle } from '../../app/domain/vehicle/vehicle.ts';
import { recordBytes } from '../../app/storage/record-file.ts';
import { recordKinds } from '../../app/storage/record-kind.ts';
import { flatText, placedWords } from '../helpers/read-pdf.ts';
import { exampleShop, exampleVehicle, readyVehicle } from '../helpers/sheet-example.ts';

const project = new URL('../..', import.meta.url).pathname;

function run(...words: string[]) {
  const command = ['--import', 'tsx', join(project, 'app/sheets-command.ts'), ...words];
  const { status, stdout, stderr } = spawnSync(process.execPath, command, { cwd: project, encoding: 'utf8' });
  return { status, lines: stdout.split('\n').filter((line) => line !== ''), errors: stderr };
}

function writeFleet(folder: string, vehicles: readonly Vehicle[]): void {
  mkdirSync(join(folder, 'vehicles'), { recursive: true });
  const head = { revision: 4, savedAt: '2026-03-18T08:00:00.000Z' };
  const shop = recordBytes(recordKinds.shop, { data: exampleShop, ...head });
  if (!shop.ok) throw new Error(shop.error);
  writeFileSync(join(folder, 'shop.json'), shop.value.bytes);
  for (const data of vehicles) {
    const made = recordBytes(recordKinds.vehicle, { data, ...head });
    if (!made.ok) throw new Error(made.error);
    writeFileSync(join(folder, 'vehicles', `${data.id}.json`), made.value.bytes);
  }
}

function renamed(vehicle: Vehicle, id: string, stockNumber: string): Vehicle {
  return { ...vehicle, id, identity: { ...vehicle.identity, stockNumber } };
}

/** Every file with its contents and its time of change. */
function stateOf(folder: string): string {
  return readdirSync(folder, { recursive: true, encoding: 'utf8' })
    .sort()
    .map((name) => {
      const path = join(folder, name);
      const entry = statSync(path);
      return `${name} ${entry.mtimeMs} ${entry.isFile() ? readFileSync(path, 'utf8').length : ''}`;
    })
    .join('\n');
}

let folder = '';
let fleet = '';
beforeAll(() => {
  folder = mkdtempSync(join(tmpdir(), 'lotwright-sheets-'));
  fleet = join(folder, 'fleet');
  const sold = renamed(readyVehicle, 'vehicle-sold', 'F-900');
  writeFleet(fleet, [
    exampleVehicle,
    renamed(readyVehicle, 'vehicle-two', 'F 7/2'),
    { ...sold, sale: { soldOn: '2026-03-18', priceCents: 1_391_100, buyer: 'A. Buyer', paidOffOn: null } },
  ]);
});
afterAll(() => rmSync(folder, { recursive: true, force: true }));

describe('the sheets command', () => {
  it('prints every sheet of every vehicle that is not sold, a line each, and touches nothing in the fleet', () => {
    const before = stateOf(fleet);
    const out = join(folder, 'all');
    const { status, lines, errors } = run('--fleet', fleet, '--out', out);
    expect(errors).toBe('');
    expect(status).toBe(0);
    const ofEach = ['cost-sheet', 'job-sheet', 'plan-sheet', 'readiness-sheet', 'window-sheet'];
    const names = [
      ...ofEach.map((kind) => `F-1042-${kind}.pdf`),
      // Of the two requests one is answered; of the other vehicle both are.
      `F-1042-${shortOf('code-radio')}-code-letter.pdf`,
      ...ofEach.map((kind) => `F-7-2-vehicle-two-${kind}.pdf`),
    ].sort();
    expect(readdirSync(out).sort()).toEqual(names);
    expect(lines).toHaveLength(names.length);
    for (const name of names) expect(lines.join('\n')).toMatch(new RegExp(`${name}: \\d+ pages?`));
    const text = flatText(readFileSync(join(out, 'F-1042-job-sheet.pdf')));
    expect(text).toContain('record state 4');
    expect(stateOf(fleet)).toBe(before);
  });

  it('takes the day of the sample for today', () => {
    const out = join(folder, 'today');
    run('--fleet', fleet, '--out', out, '--kind', 'readiness-sheet', '--stock', 'F-1042');
    expect(flatText(readFileSync(join(out, 'F-1042-readiness-sheet.pdf')))).toContain('Not ready');
  });

  it('prints the kind, vehicles and paper that were asked for, sold ones too', () => {
    const out = join(folder, 'chosen');
    const words = ['--kind', 'readiness-sheet', '--stock', 'F-900, F-1042', '--paper', 'letter'];
    const { status } = run('--fleet', fleet, '--out', out, ...words);
    expect(status).toBe(0);
    expect(readdirSync(out).sort()).toEqual(['F-1042-readiness-sheet.pdf', 'F-900-readiness-sheet.pdf']);
    expect(placedWords(readFileSync(join(out, 'F-900-readiness-sheet.pdf'))).pages[0]).toEqual({
      width: 612,
      height: 792,
    });
  });

  it('passes over vehicles that have nothing for a kind, and misses it only where it was asked for by number', () => {
    const out = join(folder, 'letters');
    const all = run('--fleet', fleet, '--out', out, '--kind', 'code-letter');
    expect(all.status).toBe(0);
    expect(all.lines).toHaveLength(1);
    expect(all.errors).toContain('F 7/2: No code of this vehicle waits for an answer');
    const one = run('--fleet', fleet, '--out', out, '--kind', 'code-letter', '--stock', 'F 7/2');
    expect(one.status).toBe(1);
    expect(one.lines).toEqual([]);
  });

  it('keeps vehicles with the same stock number apart', () => {
    const twins = join(folder, 'twins');
    writeFleet(twins, [exampleVehicle, renamed(exampleVehicle, 'vehicle-twin', 'f-1042')]);
    const out = join(folder, 'twin-sheets');
    expect(run('--fleet', twins, '--out', out, '--kind', 'job-sheet').status).toBe(0);
    expect(readdirSync(out).sort()).toEqual([
      'F-1042-example-vehicle-job-sheet.pdf',
      'f-1042-vehicle-twin-job-sheet.pdf',
    ]);
  });

  it('prints what it can and ends with 1 when a file cannot be read or a number is not there', () => {
    const hurt = join(folder, 'hurt');
    writeFleet(hurt, [exampleVehicle]);
    writeFileSync(join(hurt, 'vehicles', 'broken-one.json'), '{"format":');
    const out = join(folder, 'hurt-sheets');
    const { status, lines, errors } = run(
      '--fleet',
      hurt,
      '--out',
      out,
      '--stock',
      'F-1042,Z-9',
      '--kind',
      'job-sheet',
    );
    expect(status).toBe(1);
    expect(lines).toHaveLength(1);
    expect(errors).toContain('vehicles/broken-one.json');
    expect(errors).toContain('no vehicle with the stock number Z-9');
    expect(readdirSync(join(hurt, 'vehicles')).sort()).toEqual(['broken-one.json', 'example-vehicle.json']);
  });

  it('ends with 1 when the sheets cannot be written', () => {
    const out = join(folder, 'a-file');
    writeFileSync(out, 'not a folder');
    const { status, lines, errors } = run('--fleet', fleet, '--out', out, '--stock', 'F-1042', '--kind', 'job-sheet');
    expect(status).toBe(1);
    expect(lines).toEqual([]);
    expect(errors).toContain('F-1042-job-sheet.pdf');
  });

  it('ends with 1 for a folder that is no fleet', () => {
    const { status, errors } = run('--fleet', join(folder, 'nowhere'), '--out', join(folder, 'x'));
    expect(status).toBe(1);
    expect(errors).toContain('not a fleet folder');
  });

  it.each([
    [[], 'Say which fleet folder'],
    [['--fleet', 'x'], 'Say where the sheets go'],
    [['--fleet', 'x', '--out', 'y', '--kind', 'poster'], 'no kind of sheet called “poster”'],
    [['--fleet', 'x', '--out', 'y', '--paper', 'a5'], 'no paper called “a5”'],
    [['--fleet', 'x', '--out', 'y', '--stock', 'a,,b'], 'is empty'],
    [['--fleet', 'x', '--out', 'y', '--colour', 'blue'], '--colour'],
    [['--fleet', 'x', '--out', 'y', 'stray'], 'stray'],
    [['--fleet'], '--fleet'],
  ])('ends with 2 and the usage for the words %j', (words, sentence) => {
    const { status, errors } = run(...words);
    expect(status).toBe(2);
    expect(errors).toContain(sentence);
    expect(errors).toContain('npm run sheets -- --fleet DIR --out DIR');
  });

  it('tells its usage and ends with 0 when asked for help', () => {
    const { status, lines } = run('--help');
    expect(status).toBe(0);
    expect(lines.join('\n')).toContain('--stock LIST');
  });
});
