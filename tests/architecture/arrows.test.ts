// Every import of the program against the table of who may import from whom.
import { describe, expect, it } from 'vitest';
import { objection, roomOf } from './rooms.ts';
import { type Import, importsOf, programSources, readSource } from './source-files.ts';

const sources = programSources();
const allImports = sources.flatMap((file) => importsOf(file, readSource(file)));

describe('the arrows', () => {
  it('are kept by every import of the program', () => {
    expect(allImports.flatMap((found) => objection(found) ?? [])).toEqual([]);
  });

  it('are read from the real sources', () => {
    expect(sources.length).toBeGreaterThan(100);
    expect(allImports.length).toBeGreaterThan(sources.length);
    expect(sources.filter((file) => roomOf(file) === null)).toEqual([]);
  });

  it('are read completely: every import statement is found', () => {
    const statements = sources.flatMap(
      (file) => readSource(file).match(/^(import\b(?!\.)|export\b.*\bfrom ['"])/gm) ?? [],
    );
    const dynamic = allImports.filter(({ file, line }) => !/^(import|export|\})/.test(lineOf(file, line)));
    expect(allImports.length - dynamic.length).toBe(statements.length);
  });

  it('leave ipcMain to one file', () => {
    const users = sources.filter((file) => /\bipcMain\b/.test(importLines(file)));
    expect(users, 'Only app/shell/ipc.ts registers channels; add yours to app/contract/channels.ts.').toEqual([
      'app/shell/ipc.ts',
    ]);
  });

  it('leave the clock and random numbers out of the domain and the contract', () => {
    const impure =
      /\bDate\.now\(|\bnew Date\(\s*\)|\bMath\.random\(|\bperformance\.now\(|\bcrypto\.|\bprocess\.|\bset(Timeout|Interval)\(/;
    const guilty = sources
      .filter((file) => file.startsWith('app/domain/') || file.startsWith('app/contract/'))
      .filter((file) => impure.test(readSource(file).replace(/\/\*[\s\S]*?\*\/|\/\/.*$/gm, '')));
    expect(guilty, 'Pass the day, the instant or the new identity in as an argument.').toEqual([]);
  });

  function lineOf(file: string, line: number): string {
    return readSource(file).split('\n')[line - 1] ?? '';
  }
  function importLines(file: string): string {
    return (readSource(file).match(/^import[\s\S]*?from\s+['"]electron['"]/gm) ?? []).join('\n');
  }
});

describe('the judgement', () => {
  function judge(file: string, code: string): string[] {
    return importsOf(file, code).flatMap((found: Import) => objection(found) ?? []);
  }

  it.each([
    ['app/domain/money/costs.ts', "import { readFileSync } from 'node:fs';"],
    ['app/domain/money/costs.ts', "import fs from 'fs';"],
    ['app/domain/money/costs.ts', "import { app } from 'electron';"],
    ['app/domain/money/costs.ts', "import { FleetStore } from '../../storage/fleet-store.ts';"],
    ['app/domain/money/costs.ts', "export { channels } from '../../contract/channels.ts';"],
    ['app/contract/views.ts', "import '../services/desk-session.ts';"],
    ['app/storage/fleet-store.ts', "import { app } from 'electron';"],
    ['app/storage/fleet-store.ts', "const Store = await import('electron-store');"],
    ['app/storage/fleet-store.ts', "import type { AppError } from '../contract/app-error.ts';"],
    ['app/printing/draw.ts', "import { carve } from '../domain/vehicle/vehicle.ts';"],
    ['app/services/lot-rows.ts', "import { useState } from 'react';"],
    ['app/services/lot-rows.ts', "import { log } from '../shell/log.ts';"],
    ['app/preload.ts', "import { channels } from './contract/channels.ts';"],
    ['app/preload.ts', "import { z } from 'zod';"],
    ['app/preload.ts', "import { join } from 'node:path';"],
    ['renderer/bridge.ts', "import { channels } from '../app/contract/channels.ts';"],
    ['renderer/bridge.ts', "import { ipcRenderer } from 'electron';"],
    ['renderer/bridge.ts', "import { join } from 'node:path';"],
    ['renderer/screens/lot/lot-screen.tsx', "import { Form } from '../setup/form.tsx';"],
    ['renderer/screens/lot/lot-screen.tsx', "import type { FormProps } from '../setup/form.tsx';"],
    ['app/shell/window.ts', "import { words } from '../../renderer/text/common.ts';"],
    ['app/main.ts', "import { prepareGround } from './dev/ground.mjs';"],
    ['app/shell/window.ts', "import x from '../dev/build.mjs';"],
    ['app/elsewhere/new-room.ts', "import { ok } from '../domain/shared/result.ts';"],
  ])('refuses in %s: %s', (file, code) => {
    const objections = judge(file, code);
    expect(objections).toHaveLength(1);
    expect(objections[0]).toMatch(/^\S+:1 must not import \S+\. [A-Za-z].*\.$/);
  });

  it.each([
    ['app/domain/money/costs.ts', "import { z } from 'zod';\nimport { addDays } from '../shared/day.ts';"],
    ['app/storage/desk-settings.ts', "const Store = await import('electron-store');"],
    ['app/services/lot-rows.ts', "import { channels } from '../contract/channels.ts';"],
    ['app/preload.ts', "import type { Bridge } from './contract/bridge.ts';"],
    ['renderer/bridge.ts', "import type {\n  Bridge,\n} from '../app/contract/bridge.ts';"],
    ['renderer/screens/lot/lot-screen.tsx', "import { Button } from '../../ui/button.tsx';\nimport './lot.css';"],
    ['app/domain/money/costs.ts', "// import { app } from 'electron';\n/* import 'node:fs'; */\nconst text = 1;"],
  ])('lets pass in %s: %s', (file, code) => {
    expect(judge(file, code)).toEqual([]);
  });
});
