// Words of making sheets, several at once or of the whole fleet, and of finding one by its mark.
import type { FoundSheet, SheetTarget } from '../../app/contract/sheet-channels.ts';
import { plural } from '../../app/domain/shared/text.ts';
import type { AnySheetKind, FleetSheetKind } from '../../app/domain/sheets/sheet.ts';
import { showMark } from '../../app/domain/sheets/sheet-mark.ts';
import { showMoment } from './instant.ts';
import { sheetsText } from './sheets.ts';

const fleetKinds = {
  'parts-list': 'Parts and cores',
  'fleet-list': 'Fleet list',
  'money-summary': 'Ageing and money',
} satisfies Record<FleetSheetKind, string>;

const kinds: Readonly<Record<AnySheetKind, string>> = { ...sheetsText.kinds, ...fleetKinds };

const kindsFor: Readonly<Record<AnySheetKind, string>> = {
  ...sheetsText.kindsFor,
  'parts-list': 'By supplier: what is on order, promised and overdue, what is to order, and old units owed back.',
  'fleet-list': 'Every vehicle with what it waits for and its hold strip, under one time axis.',
  'money-summary':
    'For the manager: how old the stock is, what is tied up and due, and the usual measures with their limits.',
};

function standing(found: FoundSheet): string {
  const isFleet = found.vehicleId === null;
  switch (found.standing) {
    case 'gone':
      return 'The vehicle is no longer in the fleet.';
    case 'older':
      return isFleet
        ? 'Out of date: something in the fleet has changed since.'
        : `Out of date: printed from record state ${found.revision}; now it is ${found.nowRevision ?? 0}.`;
    case 'current':
      return found.isOfToday
        ? 'Current: nothing has changed since.'
        : `The ${isFleet ? 'records are' : 'record is'} unchanged, but the sheet is as of ${found.asOf}: days held, forecasts and what is overdue have moved on.`;
  }
}

export const sheetJobText = {
  kinds,
  kindsFor,
  more: (count: number) => (count === 0 ? 'More kinds at once' : `More kinds at once: ${count}`),
  together: 'All in one file',
  saveMany: (count: number) => `Save ${count} as PDF`,
  saveTip: 'Into the fleet’s folder of sheets',
  elsewhere: 'Save as …',
  elsewhereTip: 'Asks where the PDF goes',
  print: 'Print …',
  printTip: 'Opens one PDF in this computer’s program for PDF files; print it there',
  nothingChosen: 'Choose vehicles on the left first, or look at one.',
  isBusy: 'Sheets are being made.',
  wholeFleet: 'Of the whole fleet. Choose vehicles on the left for a part of it.',
  partOfFleet: (count: number) => `Of the ${plural(count, 'vehicle', 'vehicles')} chosen on the left.`,
  progressLabel: 'Making sheets',
  progress: (done: number, total: number, now: string) =>
    total === 0 ? 'Waiting for where they go …' : `${done} of ${total}${now === '' ? '' : `: ${now}`}`,
  cancel: 'Cancel',
  cancelling: 'Stopping after this sheet …',
  cancelled: (files: number) =>
    files === 0
      ? 'Cancelled. Nothing was written.'
      : `Cancelled. ${plural(files, 'file was', 'files were')} written before and ${files === 1 ? 'is' : 'are'} whole.`,
  written: (files: readonly { readonly fileName: string; readonly sheets: number }[], to: SheetTarget) => {
    const [only] = files;
    if (files.length !== 1 || only === undefined) return `${files.length} files were written.`;
    const several = only.sheets === 1 ? '' : ` It holds ${only.sheets} sheets.`;
    return to === 'printer'
      ? `Handed over for printing: ${only.fileName}.${several}`
      : `Written: ${only.fileName}.${several}`;
  },
  sheetsIn: (count: number) => (count === 1 ? '' : plural(count, 'sheet', 'sheets')),
  open: 'Open',
  showFolder: 'Show folder',
  moreRows: (count: number) => `${plural(count, 'more row stands', 'more rows stand')} on the paper.`,
  filter: 'Show',
  filters: {
    stock: 'In stock',
    ready: 'Ready',
    work: 'In work or programming',
    waiting: 'Waiting for others',
    idle: 'Idle',
    sold: 'Sold',
    all: 'All',
  },
  markLabel: 'Mark on a sheet',
  markTip: 'Six characters at its foot',
  find: 'Find',
  found: (found: FoundSheet) => `${kinds[found.kind]}${found.vehicleId === null ? '' : `, ${found.subject}`}`,
  foundPrinted: (found: FoundSheet) => `Printed ${showMoment(found.printedAt)} by ${found.printedBy}.`,
  standing,
  seeIt: 'Show as it is now',
  notFound: (mark: string) =>
    `No sheet with the mark ${showMark(mark)} is noted in this fleet. It may have been printed from another one, or its note was lost.`,
} as const;
