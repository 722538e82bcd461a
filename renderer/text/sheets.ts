// Words of the sheets screen.
import { plural } from '../../app/domain/shared/text.ts';
import type { SheetKind, SheetStep } from '../../app/domain/sheets/sheet.ts';
import type { Purpose } from './purpose.ts';

const choose = 'Pick a vehicle on the left and a kind of sheet; look at the paper, then write or print it.';
export const sheetsPurpose: Purpose = {
  manager: `Paper for the workshop, for sales and for you. ${choose}`,
  technician: `Paper for the work on a vehicle. ${choose}`,
  sales: `Paper for the windscreen and for the buyer. ${choose}`,
};

export const sheetsText = {
  title: 'Sheets',
  search: 'Search vehicles',
  searchTip: 'Stock number, VIN, make or model',
  kind: 'Sheet',
  kinds: {
    'job-sheet': 'Job sheet',
    'plan-sheet': 'Programming plan',
    'readiness-sheet': 'Readiness sheet',
    'window-sheet': 'Window sheet',
    'code-letter': 'Code request letter',
    'cost-sheet': 'Cost sheet',
  } satisfies Record<SheetKind, string>,
  kindsFor: {
    'job-sheet': 'For the technician: what to do, in which order, with which cautions.',
    'readiness-sheet': 'For sales: is it ready, what was found and done, what a buyer must be told. No cost, no code.',
    'plan-sheet':
      'For programming: the steps in their order with boxes, what must be true first, room for what is read.',
    'window-sheet': 'For the windscreen: one page, large. Nothing internal; the price only where Setup says so.',
    'code-letter':
      'To whoever gives a code: which vehicle, device and kind of code, with proof of ownership. One letter for each request.',
    'cost-sheet':
      'For the manager: every cost from purchase to sale, holding, tax, margin and days. Not to be handed out.',
  } satisfies Record<SheetKind, string>,
  letterAbout: 'The letter shown is about',
  vehicles: 'Vehicles. Arrow keys move, Space chooses.',
  chosen: (count: number) => (count === 0 ? 'None chosen' : plural(count, 'chosen', 'chosen')),
  chooseShown: 'Choose all shown',
  chooseNone: 'Choose none',
  none: 'No vehicle is found by this.',
  noVehicles: 'No vehicle is in the lot yet.',
  pickOne: 'Pick a vehicle on the left to see its sheet. Choose several to write them at once.',
  reading: 'Making the preview …',
  readingPicture: 'Reading the photograph …',
  save: 'Save as PDF',
  written: (fileName: string) => `Written: ${fileName}.`,
  writtenMany: (count: number) => `${count} sheets were written.`,
  writtenTitle: 'Written just now',
  pages: (count: number) => plural(count, 'page', 'pages'),
  open: 'Open',
  openFile: (fileName: string) => `Open ${fileName}`,
  showFolder: 'Show folder',
  stepStates: { open: 'to do', done: 'done', 'left-out': 'left out' } satisfies Record<SheetStep['state'], string>,
  first: 'First:',
  initials: 'initials',
  concerns: (what: string) => `Here: ${what}.`,
  printedBy: (by: string, when: string) => `Printed by ${by}, ${when}`,
  barcode: (label: string) => (label === '' ? 'Bar code:' : `Bar code (${label}):`),
} as const;
