// Words for what a bar code scanner has read.
import type { FoundSheet } from '../../app/contract/sheet-channels.ts';
import { sheetJobText } from './sheet-job.ts';

export const scanText = {
  unknown: (text: string) =>
    `No vehicle here has “${text}” as its VIN or stock number, and no sheet has it as its mark.`,
  sheet: (found: FoundSheet) =>
    `${sheetJobText.found(found)}. ${sheetJobText.foundPrinted(found)} ${sheetJobText.standing(found)}`,
  notHere: (vin: string) => `No vehicle here has the VIN ${vin}.`,
  takeIn: 'Take it in',
} as const;
