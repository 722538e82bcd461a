// The log: there when it is needed, small, and without anything that is somebody's.
import { existsSync, mkdtempSync, readFileSync, rmSync, statSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import path from 'node:path';
import { afterEach, beforeEach, describe, expect, it, vi } from 'vitest';
import { earlierLogs, longestLogBytes, maskForLog, openLog, readLastLines } from '../../app/shell/log.ts';

let folder: string;
let file: string;
const clock = () => '2026-03-04T05:06:07.000Z';

beforeEach(() => {
  folder = mkdtempSync(path.join(tmpdir(), 'lotwright-log-'));
  file = path.join(folder, 'deeper', 'lotwright.log');
});
afterEach(() => rmSync(folder, { recursive: true, force: true }));

describe('the log file', () => {
  it('has a line an entry, each with its time and level', () => {
    const log = openLog({ file, clock, echo: false });
    log.info('program', 'started');
    log.error('desk', 'failed', new Error('first\nsecond'));
    const lines = readFileSync(file, 'utf8').trimEnd().split('\n');
    expect(lines).toHaveLength(2);
    expect(lines[0]).toBe('2026-03-04T05:06:07.000Z info program: started');
    expect(lines[1]).toContain('error desk: failed | Error: first / second');
  });

  it('begins anew when it has grown long, and keeps a few of those before', () => {
    const log = openLog({ file, clock, echo: false });
    for (let round = 1; round <= earlierLogs + 2; round += 1) {
      log.info('program', `round ${round}`);
      writeFileSync(file, `${readFileSync(file, 'utf8')}${'x'.repeat(longestLogBytes)}`);
    }
    log.info('program', 'new');
    expect(readFileSync(file, 'utf8')).toBe('2026-03-04T05:06:07.000Z info program: new\n');
    expect(readFileSync(`${file}.1`, 'utf8')).toContain(`round ${earlierLogs + 2}\n`);
    expect(readFileSync(`${file}.${earlierLogs}`, 'utf8')).toContain('round 3\n');
    expect(existsSync(`${file}.${earlierLogs + 1}`)).toBe(false);
    expect(statSync(`${file}.1`).size).toBeGreaterThan(longestLogBytes);
  });

  it('gives its last lines, also when it has just begun anew', () => {
    const log = openLog({ file, clock, echo: false });
    expect(readLastLines(file, 3)).toEqual([]);
    for (const text of ['one', 'two', 'three']) log.info('program', text);
    expect(readLastLines(file, 2).map((line) => line.split(': ')[1])).toEqual(['two', 'three']);
    writeFileSync(`${file}.1`, 'earlier\n');
    expect(readLastLines(file, 4)[0]).toBe('earlier');
  });

  it('does not stop the program when it cannot be written', () => {
    const blocker = path.join(folder, 'blocker');
    writeFileSync(blocker, '');
    const complain = vi.spyOn(console, 'error').mockImplementation(() => undefined);
    const log = openLog({ file: path.join(blocker, 'lotwright.log'), clock, echo: false });
    expect(() => log.info('program', 'started')).not.toThrow();
    expect(complain).toHaveBeenCalledOnce();
    complain.mockRestore();
    expect(existsSync(file)).toBe(false);
  });
});

describe('maskForLog', () => {
  it.each([
    ["ENOENT: no such file, open '/home/ann/Fleet of Ann/vehicles/lw-1.json'", 'ENOENT: no such file, open <text>'],
    ['Opening /home/ann/fleet/shop.json failed', 'Opening <path> failed'],
    ['Opening C:\\Users\\Ann\\fleet\\shop.json failed', 'Opening <path> failed'],
    ['Opening \\\\server\\share\\fleet failed', 'Opening <path> failed'],
    ['Code "4711" refused', 'Code <text> refused'],
    ['at save (file:///opt/lotwright/resources/app.asar/app/built/main.cjs:12:34)', 'at save (main.cjs:12:34)'],
    ['at save (C:\\Program Files\\Lotwright\\main.cjs:12:34)', 'at save (<path> main.cjs:12:34)'],
    ['vehicle:change refused: change.value.priceCents=invalid_type', undefined],
    ['3/4 done in 1.5 s', undefined],
  ])('turns %s into %s', (text, masked) => {
    expect(maskForLog(text)).toBe(masked ?? text);
  });
});
