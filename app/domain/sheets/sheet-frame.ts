// What every sheet of a vehicle shares: the frame around the blocks, the masthead, the barcodes. No content of its own.
import type { Shop } from '../fleet/shop.ts';
import { type Identity, vehicleTitle } from '../vehicle/identity.ts';
import type { Vehicle } from '../vehicle/vehicle.ts';
import type { AnySheetKind, Sheet, SheetBlock, SheetKind } from './sheet.ts';
import { sheetMark } from './sheet-mark.ts';

/** When a sheet is printed (ISO instant), by whom (a name), from which revision of the record. */
export type Printing = { readonly at: string; readonly by: string; readonly revision: number };

/** What is the same on a sheet of one vehicle and on one of the fleet. `these` are what does not exist in the invented sample. */
export function frameOf(
  kind: AnySheetKind,
  subjectId: string,
  shop: Shop,
  printed: Printing,
  these: 'this vehicle' | 'these vehicles',
): Omit<Sheet, 'title' | 'subject' | 'orientation' | 'blocks' | 'footer'> {
  const { name, address, phone, paper, dayForm } = shop.dealer;
  return {
    kind,
    language: 'en',
    paper,
    dayForm,
    dealer: { name, address, phone },
    sampleNotice: shop.sample === null ? '' : `Invented sample: this dealer, these people and ${these} do not exist.`,
    printedAt: printed.at,
    printedBy: printed.by,
    revision: printed.revision,
    mark: sheetMark({ kind, subjectId, revision: printed.revision, printedAt: printed.at }),
  };
}

export function frameSheet(
  kind: SheetKind,
  title: string,
  vehicle: Vehicle,
  shop: Shop,
  printed: Printing,
  content: { readonly blocks: readonly SheetBlock[]; readonly footer: string },
): Sheet {
  return {
    ...frameOf(kind, vehicle.id, shop, printed, 'this vehicle'),
    title,
    subject: `${vehicle.identity.stockNumber} · ${vehicleTitle(vehicle.identity)}`,
    orientation: 'portrait',
    ...content,
  };
}

export function masthead(identity: Identity): SheetBlock {
  const tags = [
    { label: 'Key tag', value: identity.keyTag },
    { label: 'Where', value: identity.location },
  ].filter((tag) => tag.value !== '');
  return { kind: 'masthead', number: identity.stockNumber, name: vehicleTitle(identity), tags };
}

/**
 * The VIN as Code 39 for older readers and as Data Matrix for cameras. Code 39 writes capitals and digits, the others the printable ASCII
 * characters; what none can hold gets no bars.
 */
export function barcodes({ vin, stockNumber }: Identity): SheetBlock[] {
  const blocks: SheetBlock[] = [];
  if (/^[A-Z0-9]{1,24}$/.test(vin))
    blocks.push({
      kind: 'barcode',
      symbology: 'code39',
      value: vin,
      label: 'VIN',
      alternateText: `Barcode (Code 39) of the VIN ${vin}`,
    });
  if (/^[\x21-\x7e][\x20-\x7e]*$/.test(vin))
    blocks.push({
      kind: 'barcode',
      symbology: 'datamatrix',
      value: vin,
      label: 'VIN',
      alternateText: `Barcode (Data Matrix) of the VIN ${vin}`,
    });
  if (/^[\x21-\x7e][\x20-\x7e]*$/.test(stockNumber))
    blocks.push({
      kind: 'barcode',
      symbology: 'code128',
      value: stockNumber,
      label: 'Stock number',
      alternateText: `Barcode (Code 128) of the stock number ${stockNumber}`,
    });
  return blocks;
}
