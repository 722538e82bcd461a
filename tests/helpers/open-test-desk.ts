// A desk session on a real temporary folder, with everything outside the program recorded instead of done.

import { mkdtemp, rm } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import type { ChannelInput, ChannelName, ChannelOutput } from '../../app/contract/channels.ts';
import { channels } from '../../app/contract/channels.ts';
import { noTargets } from '../../app/domain/vehicle/purchase.ts';
import type { defaultShop } from '../../app/services/default-shop.ts';
import { type DeskSession, openDeskSession } from '../../app/services/desk-session.ts';
import { type DeskSettings, defaultDeskSettings } from '../../app/storage/desk-settings.ts';

export const testToday = '2026-03-18';

export type TestDesk = {
  readonly folder: string;
  readonly session: DeskSession;
  readonly emitted: { name: string; payload: unknown }[];
  readonly opened: string[];
  readonly reported: unknown[];
  /** What was put on the clipboard, one after the other; '' where it was cleared. */
  readonly copied: string[];
  /** Asks as the page does and expects success; the answer is checked against the contract's own schema. */
  readonly ask: <Name extends ChannelName>(name: Name, input: ChannelInput<Name>) => Promise<ChannelOutput<Name>>;
  /** Asks and expects to be refused; gives the error. */
  readonly refused: <Name extends ChannelName>(
    name: Name,
    input: ChannelInput<Name>,
  ) => Promise<{ code: string; detail: string; problems: readonly { field: string; sentence: string }[] }>;
  setToday(day: string): void;
  /** What the person chooses in the system's dialog for folders from now on; null: nothing. */
  setChosenFolder(folder: string | null): void;
  /** The clock goes on by so many seconds. */
  passTime(seconds: number): void;
  reopen(): Promise<TestDesk>;
  discard(): Promise<void>;
};

export async function openTestDesk(existingFolder?: string, startsOn = testToday): Promise<TestDesk> {
  const folder = existingFolder ?? (await mkdtemp(join(tmpdir(), 'lotwright-desk-')));
  const emitted: TestDesk['emitted'] = [];
  const opened: string[] = [];
  const reported: unknown[] = [];
  const copied: string[] = [];
  let settings: DeskSettings = defaultDeskSettings;
  let today = startsOn;
  let ticks = 0;
  let chosenFolder: string | null = null;
  let made = 0;
  const session = await openDeskSession({
    fleetFolder: join(folder, 'fleet'),
    clock: () => new Date(Date.UTC(2026, 2, 18, 9, 0, ticks++)).toISOString(),
    today: () => today,
    newIdentifier: () => `vehicle-${String(++made + Math.floor(Math.random() * 1e9)).padStart(6, '0')}`,
    owner: { user: 'tester', host: 'desk-one', processId: process.pid },
    deskSettings: {
      get: () => settings,
      change: (part) => {
        settings = { ...settings, ...part };
        return { ok: true, value: settings };
      },
      notice: null,
    },
    sample: { shipped: join(folder, 'shipped'), copy: join(folder, 'sample-fleet') },
    vaultMaking: { cost: { N: 16, r: 1, p: 1 }, rsaBits: 1024 },
    keyCost: { N: 16, r: 1, p: 1 },
    fontsFolder: join(import.meta.dirname, '..', '..', 'app', 'printing', 'fonts'),
    appVersion: '0.0.0',
    outside: {
      chooseFolder: async () => chosenFolder,
      openFile: async (path) => {
        opened.push(path);
        return true;
      },
      showFolder: (path) => void opened.push(path),
      chooseArchiveToWrite: async (name) => join(folder, name),
      chooseArchiveToOpen: async () => join(folder, 'fleet-2026-03-18.zip'),
      chooseSheetFile: async (name) => join(folder, 'chosen', name),
      chooseSheetFolder: async () => join(folder, 'chosen'),
      printPdf: async (path) => {
        opened.push(`print ${path}`);
        return true;
      },
      applyTheme: () => {},
      copyPassing: async (text) => void copied.push(text),
      forgetCopied: async () => void copied.push(''),
      programFacts: () => ({ runtime: 'Runtime 1', system: 'System 2', screens: ['1280 × 800 at 1'] }),
      readLicences: async () => [{ name: 'some-package', version: '1.0.0', licence: 'MIT', text: 'Be kind.' }],
      lastLogLines: async () => ['line of the log'],
    },
    emit: (name, payload) => void emitted.push({ name, payload }),
    report: (_what, error) => void reported.push(error),
  });
  if (!session.ok) throw new Error(`The test desk did not open: ${session.error.code} ${session.error.detail}`);
  const desk: TestDesk = {
    folder,
    session: session.value,
    emitted,
    opened,
    reported,
    copied,
    ask: async (name, input) => {
      const answer = await session.value.answer(name, channels[name].input.parse(input) as typeof input);
      if (!answer.ok)
        throw new Error(`${name} was refused: ${JSON.stringify(answer.error)} ${String(reported[0] ?? '')}`);
      channels[name].output.parse(answer.value);
      return answer.value;
    },
    refused: async (name, input) => {
      const answer = await session.value.answer(name, input);
      if (answer.ok) throw new Error(`${name} was expected to be refused.`);
      return answer.error;
    },
    passTime: (seconds) => {
      ticks += seconds;
    },
    setChosenFolder: (folder) => {
      chosenFolder = folder;
    },
    setToday: (day) => {
      today = day;
    },
    reopen: async () => {
      await session.value.close();
      return openTestDesk(folder);
    },
    discard: async () => {
      await session.value.close();
      await rm(folder, { recursive: true, force: true });
    },
  };
  return desk;
}

/** A vehicle as it is taken in: invented, with a VIN whose check digit holds. */
export function takeInOf(stockNumber: string, vin: string): ChannelInput<'vehicle:take-in'> {
  return {
    identity: {
      stockNumber,
      vin,
      vinReason: '',
      modelYear: 2017,
      make: 'Merrowick',
      model: 'Mallow',
      body: 'estate',
      colour: 'slate',
      drive: 'combustion',
      odometer: { reading: 84_120, unit: 'mi' },
      location: 'Row B',
      keyTag: '17',
    },
    purchase: {
      boughtOn: '2026-03-02',
      source: 'Fernhill auction',
      priceCents: 640_000,
      feesCents: 25_000,
      transportCents: 12_000,
      paperKind: 'Title',
      paperExpectedOn: null,
      paperReceivedOn: null,
      keysReceived: 1,
      fundingPlanId: null,
    },
    arrival: { expectedOn: null, arrivedOn: '2026-03-04' },
    targets: {
      ...noTargets,
      askingCents: 1_099_500,
      budgetCents: 150_000,
      tradeValueCents: 600_000,
      marginFloorCents: 80_000,
    },
  };
}

/** The three people of the test shop, one of each role. */
export const testPeople = [
  { id: 'manager', name: 'Manager', role: 'manager', labourCentsPerHour: null, isActive: true },
  { id: 'tech-one', name: 'Una Technician', role: 'technician', labourCentsPerHour: 9_000, isActive: true },
  { id: 'sales-one', name: 'Sal Sales', role: 'sales', labourCentsPerHour: null, isActive: true },
] as const satisfies typeof defaultShop.people;
